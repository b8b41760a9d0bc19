// Command page opens pages in headless Chromium and fails unless they read and
// print as they should: nothing wider than the screen at 360 px and at letter
// and A4 width, no script error, enough contrast, a name on every picture, and
// no more than so many printed pages.
//
//	go run ./.ci/page -pages 4 visit.html ...
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
)

// widths in CSS pixels: a phone, letter and A4 paper at 96 px an inch.
var widths = []int{360, 816, 794}

// harness shows a page in one frame a width and writes what it finds into the
// title of its own document.
const harness = `<!doctype html><meta charset="utf-8"><title>waiting</title><body><script>
const page = %s, widths = %s, faults = [];
window.addEventListener("error", e => faults.push("script: " + e.message));
const lum = c => { const [r, g, b] = c.map(v => { v /= 255; return v <= 0.03928 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
const rgb = s => { const m = s.match(/[\d.]+/g).map(Number); return m.length > 3 && m[3] === 0 ? null : m.slice(0, 3); };
const ground = el => { for (; el; el = el.parentElement) { const c = rgb(el.ownerDocument.defaultView.getComputedStyle(el).backgroundColor); if (c) return c; } return [255, 255, 255]; };
let open = widths.length;
for (const width of widths) {
  const f = document.createElement("iframe");
  f.style.width = width + "px"; f.style.height = "900px"; f.style.border = "0"; f.srcdoc = page;
  f.onload = () => {
    const d = f.contentDocument, w = f.contentWindow;
    d.querySelectorAll("details").forEach(x => x.open = true);
    const wide = d.documentElement.scrollWidth;
    if (wide > width) {
      const worst = [...d.querySelectorAll("body *")].filter(x => !x.closest(".wide") && x.getBoundingClientRect().right > width + 1).slice(0, 3);
      faults.push("at " + width + " px the page is " + wide + " px wide: " + worst.map(x => x.tagName + "." + x.className + " " + x.textContent.slice(0, 40)).join(" | "));
    }
    if (width === widths[0]) {
      let texts = 0;
      for (const el of d.querySelectorAll("body *")) {
        if (el.closest("svg") || ![...el.childNodes].some(n => n.nodeType === 3 && n.textContent.trim())) continue;
        texts++;
        const a = lum(rgb(w.getComputedStyle(el).color)), b = lum(ground(el));
        const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
        if (ratio < 4.5) faults.push("contrast " + ratio.toFixed(2) + ": " + el.textContent.slice(0, 40));
      }
      if (texts < 50) faults.push("only " + texts + " texts on the page");
      const pictures = [...d.querySelectorAll("svg, img")];
      if (pictures.length === 0) faults.push("no picture");
      for (const p of pictures) {
        const name = p.getAttribute("aria-label") || p.getAttribute("alt") || p.querySelector("title")?.textContent;
        if (!name) faults.push("a picture without a name");
      }
      const ids = [...d.querySelectorAll("[id]")].map(x => x.id), twice = ids.filter((x, i) => ids.indexOf(x) !== i);
      if (twice.length) faults.push("ids that stand twice: " + [...new Set(twice)].join(", "));
      if (d.querySelector("script")) faults.push("the page has a script");
    }
    if (--open === 0) document.title = JSON.stringify(faults);
  };
  document.body.append(f);
}
</script>`

func main() {
	most := flag.Int("pages", 4, "most printed `pages`")
	flag.Parse()
	browser, err := find("chromium", "chromium-browser", "google-chrome")
	if err != nil {
		fatal(err)
	}
	failed := false
	for _, name := range flag.Args() {
		faults, err := look(browser, name, *most)
		if err != nil {
			fatal(err)
		}
		for _, f := range faults {
			failed = true
			fmt.Printf("%s: %s\n", name, f)
		}
		if len(faults) == 0 {
			fmt.Printf("%s: reads and prints as it should\n", name)
		}
	}
	if failed || flag.NArg() == 0 {
		os.Exit(1)
	}
}

func fatal(err error) {
	fmt.Fprintln(os.Stderr, "page:", err)
	os.Exit(1)
}

func find(names ...string) (string, error) {
	for _, n := range names {
		if path, err := exec.LookPath(n); err == nil {
			return path, nil
		}
	}
	return "", fmt.Errorf("no Chromium found as %s", strings.Join(names, ", "))
}

// look gives the faults of one page.
func look(browser, name string, most int) ([]string, error) {
	page, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "page")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	// JSON escapes < and > so that the page cannot end the script it stands in.
	quoted, err := json.Marshal(string(page))
	if err != nil {
		return nil, err
	}
	sizes, err := json.Marshal(widths)
	if err != nil {
		return nil, err
	}
	frame := filepath.Join(dir, "frame.html")
	if err := os.WriteFile(frame, fmt.Appendf(nil, harness, quoted, sizes), 0o600); err != nil {
		return nil, err
	}
	dom, err := chromium(browser, dir, "--virtual-time-budget=10000", "--dump-dom", "file://"+frame)
	if err != nil {
		return nil, err
	}
	title := regexp.MustCompile(`<title>(.*?)</title>`).FindSubmatch(dom)
	var faults []string
	if title == nil || json.Unmarshal([]byte(html.UnescapeString(string(title[1]))), &faults) != nil {
		return nil, fmt.Errorf("%s: the page was not looked at: %.200s", name, dom)
	}
	whole, err := filepath.Abs(name)
	if err != nil {
		return nil, err
	}
	pdf := filepath.Join(dir, "page.pdf")
	if _, err := chromium(browser, dir, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+whole); err != nil {
		return nil, err
	}
	b, err := os.ReadFile(pdf)
	if err != nil {
		return nil, err
	}
	n := len(regexp.MustCompile(`/Type\s*/Page[^s]`).FindAll(b, -1))
	if n < 1 || n > most {
		faults = append(faults, fmt.Sprintf("prints on %d pages, want 1 to %d", n, most))
	}
	return faults, nil
}

// chromium runs the browser with nothing of its own in the background.
func chromium(browser, dir string, args ...string) ([]byte, error) {
	cmd := exec.Command(browser, append([]string{
		"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--user-data-dir=" + filepath.Join(dir, "profile"),
	}, args...)...)
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", browser, err)
	}
	return out, nil
}
