package house_test

var lidExceptions = exceptions{
	figure: {
		"lid.Lid.Sit":      "no figure found: pages on lids name seat and bevel, none gives sizes with the play; turned in small steps beside it",
		"lid.Lid.Strength": "no figure found: no text works out a worn lid; its plate and sections have their rows in plate and concrete",
		"lid.Loss.Until":   "no figure found: the papers give losses, none a time that is left; the loss that it starts from has its row",
	},
	eachSide: {
		"lid.plateFaults: Seat": "what the plate solver would say of sizes that were let pass; no input is known that brings it about",
	},
}
