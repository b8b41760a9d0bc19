package house_test

var rootExceptions = exceptions{
	counts: {
		"manway.Edge.Thickness": "a list of the inches that its words stand for",
	},
	source: {
		"manway.Check.Use": "demand over capacity is what the word means",
		"manway.Pieces":    "counts by arithmetic",
	},
	basis: {
		"manway.Groundwater.Taken": "the assumption that it gives stands in the result of every calculation that uses it",
		"manway.Pieces":            "counts by arithmetic",
	},
	figure: {
		"manway.Groundwater.Taken": "gives back what was found, or grade, which is no figure",
	},
}
