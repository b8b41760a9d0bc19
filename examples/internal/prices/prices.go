// Package prices reads the price books that a command's flags name.
package prices

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"strings"

	"manway.example/manway/cost"
)

// Book is a price book, or none.
type Book struct {
	cost.Book
	Given bool
}

// Files are the flags -prices and -local.
type Files struct{ base, local string }

// Flags declares -prices and -local.
func (f *Files) Flags(fs *flag.FlagSet) {
	fs.StringVar(&f.base, "prices", "", "price book, a CSV `FILE`")
	fs.StringVar(&f.local, "local", "", "second price book laid over the first, a CSV `FILE`")
}

// Read reads the books that the flags name and lays them over each other.
func (f *Files) Read() (Book, error) {
	var book Book
	for _, name := range [...]string{f.base, f.local} {
		if name == "" {
			continue
		}
		b, err := read(name)
		if err != nil {
			return Book{}, err
		}
		book.Book, book.Given = b.Over(book.Book), true
	}
	return book, nil
}

func read(name string) (cost.Book, error) {
	file, err := os.Open(name)
	if err != nil {
		return cost.Book{}, fmt.Errorf("price book: %w", err)
	}
	defer file.Close()
	book, err := cost.ReadPriceBook(file)
	if err != nil {
		return cost.Book{}, errors.New(name + ": " + strings.ReplaceAll(err.Error(), "\n", "; "))
	}
	return book, nil
}
