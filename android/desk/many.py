"""A field of many pits, as notes: for looking at, and for how long its plan takes. The first argument is how many pits."""
import json
import sys

SIDE = 20
PAN = [{"to_mm": to, "comes_away": "flat_plates", "resistance": "hard_push"} if 200 <= to <= 300 else
       {"to_mm": to, "comes_away": "crumbs", "resistance": "slips_in"} for to in range(50, 500, 50)]
pits = [{"at": [round(2.5083 + 0.00028 * (pit % SIDE), 5), round(54.4998 + 0.0002 * (pit // SIDE), 5)], "accuracy_m": 3,
         "place": "open" if pit else "reference", "dug_to_mm": 450, "face": "moist", "walk": PAN} for pit in range(int(sys.argv[1]))]
field = {"name": "Many pits", "outline": [[2.508, 54.4995], [2.514, 54.4995], [2.5143, 54.502], [2.509, 54.5023]],
         "headland_mm": 16000, "texture": "sandy_loam"}
json.dump({"pitface": 1, "field": field, "pits": pits}, sys.stdout)
