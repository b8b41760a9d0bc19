package house_test

// Why what the plate refuses is not tried.
const notPlate = "what is no plate is not judged, so that the plate refuses nothing of what comes to it"

var tankExceptions = exceptions{
	counts: {
		"tank.Compartment.Full":   "Volume at one depth",
		"tank.Compartment.Length": "the difference of two of its fields",
		"tank.Loading.Use":        "the Use of the worst of its checks",
		"tank.RuleSetOf":          "looks up a table",
		"tank.Tank.AtOutlet":      "Volume at one depth",
		"tank.Tank.Full":          "Volume at one depth",
	},
	source: {
		"tank.New": "validates and reckons nothing",
	},
	basis: {
		"tank.Access.Area": "the area of a circle or a rectangle",
		"tank.FromDrops":   "its result is what was measured; the Tank of it has a Basis",
	},
	figure: {
		"tank.Access.Area":     "no figure found: the area of a circle or a rectangle, of which Chow's table is compared by the volumes",
		"tank.FromDrops":       "no figure found: its result is what was measured, the other way up",
		"tank.Tank.WaterLimit": "no figure found: solves Float, which has figures, for the groundwater",
	},
	eachSide: {
		"tank.FloorStrength.run: floor":         notPlate,
		"tank.PartitionStrength.run: partition": notPlate,
		"tank.roofJudge.balanced: Roof":         notPlate,
		"tank.roofJudge.compare: Roof":          notPlate,
		"tank.roofJudge.deepest: Roof":          notPlate,
		"tank.roofJudge.load: Roof":             notPlate,
		"tank.roofJudge.refine: Roof":           notPlate,
		"tank.roofJudge.rest: Roof":             notPlate,
		"tank.roofJudge.way: Roof":              notPlate,
		"tank.wallJudge.makePanels: end wall":   notPlate,
		"tank.wallJudge.makePanels: side wall":  notPlate,
	},
}
