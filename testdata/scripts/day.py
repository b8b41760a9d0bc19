"""Works tanks of a Python program by way of daysheet, one JSON object a line.

go build -o bin/ ./examples/... && PATH=bin:$PATH python3 testdata/scripts/day.py
"""

import json
import subprocess

tanks = [
    {"id": "demo-1", "length": "8 ft", "width": "4 ft", "depth": "48 in", "sludge1": "13 in", "scum1": "3 in", "cover": "18 in"},
    {"id": "demo-2", "length": "2.4 m", "width": "1.2 m", "depth": "1.2 m", "sludge1": "200 mm", "scum1": "50 mm", "cover": "0 in"},
    {"id": "demo-3", "length": "8", "width": "4 ft", "depth": "48 in"},
    {"id": "demo-4", "length": "8 ft", "width": "4 ft", "depth": "48 in"},
]
run = subprocess.run(
    ["daysheet", "-tolerate", "-out", "json", "-columns", "id,liquid_gal,pump_gal,reach_in", "-"],
    input="".join(json.dumps(tank) + "\n" for tank in tanks),
    stdout=subprocess.PIPE,
    text=True,
    check=True,
)
for line in run.stdout.splitlines():  # one for each tank, in their order
    answer = json.loads(line)
    if "errors" in answer:
        for error in answer["errors"]:
            print(answer["id"], error["field"], error["value"], "want", error["want"])
    elif answer["pump_gal"] is None:  # not measured is not zero
        print(answer["id"], "holds", round(answer["liquid_gal"]), "gal; not judged")
    else:
        print(answer["id"], "holds", round(answer["liquid_gal"]), "gal, pump", round(answer["pump_gal"]))
