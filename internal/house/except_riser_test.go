package house_test

var riserExceptions = exceptions{
	source: {
		"riser.StripNeed.Times": "counts rolls of what Strip reckoned",
	},
	figure: {
		"riser.Dig.While":           "no figure found: permit files weigh a tank with its soil, none with a pit open over it; the parts have their rows in tank",
		"riser.Hose.Run":            "no figure found: lengths of hose are sold, no text works one out; the length of a slope",
		"riser.Joint.InsideLength":  "no figure found: lengths of strip are listed by brand only; the circumference of a circle",
		"riser.Joint.OutsideLength": "no figure found: lengths of strip are listed by brand only; the circumference of a circle",
		"riser.Joint.Volume":        "no figure found: the half-volume rule is quoted without a worked joint",
		"riser.ReachOf":             "no figure found: rules of states give the reveal, none works out the height of a riser",
		"riser.StackOf":             "no figure found: ring heights are listed, no text works out a stack; every stack of small stocks is tried beside it",
		"riser.StripNeed.Times":     "no figure found: strip is listed by the roll of each brand",
		"riser.Wall.Deflection":     "no figure found: the examples of Moser that were read give load and stiffness, not the deflection; the same formula has derived rows in soil",
	},
}
