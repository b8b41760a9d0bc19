package riser

// ItemCode is one code that a scope line may carry, with its unit: what a price
// book needs a line for.
type ItemCode struct {
	Code        string
	Description string
	Class       Class
	Unit        string // UN/CEFACT Recommendation 20
}

// itemCodes are the fixed codes; rings, covers and adapters carry the code that
// the stock list gives them.
var itemCodes = [...]ItemCode{
	{"ring-concrete", "concrete riser ring, by height of the stack where no stock is listed", Material, "FOT"},
	{"riser-plastic", "plastic riser pipe, by height", Material, "FOT"},
	{"adapter", "adapter ring bonded to the roof", Material, "EA"},
	{"cover-concrete", "concrete lid", Material, "EA"},
	{"cover-plastic", "plastic lid with fasteners", Material, "EA"},
	{"handle-anchored", "handle with two anchors, stainless or galvanized", Material, "EA"},
	{"fastener", "stainless screw or bolt with insert, tool needed", Material, "EA"},
	{"guard-secondary", "secondary guard below the lid", Material, "EA"},
	{"sealant-strip", "preformed flexible joint sealant strip", Material, "FOT"},
	{"sealant-bead", "gunned sealant", Material, "INQ"},
	{"cement-plug", "fast-setting hydraulic cement, in place", Material, "FTQ"},
	{"repair-mortar", "repair mortar, in place", Material, "FTQ"},
	{"grout", "non-shrink grout, in place", Material, "FTQ"},
	{"concrete", "concrete, in place", Material, "FTQ"},
	{"wrap", "outside joint wrap", Material, "FTK"},
	{"anchor", "expansion or bonded anchor", Material, "EA"},
	{"gravel", "bedding gravel, compacted", Material, "YDQ"},
	{"fill", "fill brought in, compacted", Material, "YDQ"},
	{"topsoil", "topsoil", Material, "YDQ"},
	{"seed", "lawn seed", Material, "LBR"},
	{"barrier", "barrier round the opening", Material, "EA"},
	{"temporary-cover", "temporary fastened lid marked HOLE", Material, "EA"},
	{"notice", "written notice to the owner", Material, "EA"},
	{"tank", "new tank, by liquid volume", Material, "GLL"},
	{"dig-hand", "dig by hand", Labour, "LH"},
	{"backfill-hand", "backfill and compact by hand", Labour, "LH"},
	{"clean-joint", "cut roots, scrape and dry a joint", Labour, "LH"},
	{"seal-joint", "seal a joint", Labour, "LH"},
	{"lift-ring", "lift off a ring with a hoist", Labour, "LH"},
	{"set-ring", "set a ring on sealant with a hoist", Labour, "LH"},
	{"fit-adapter", "prepare the roof and bond an adapter", Labour, "LH"},
	{"fit-cover", "set and fasten a lid", Labour, "LH"},
	{"fit-handle", "drill and set a handle", Labour, "LH"},
	{"fit-fasteners", "drill and set fasteners", Labour, "LH"},
	{"fit-guard", "fit a secondary guard", Labour, "LH"},
	{"guard-opening", "barrier, temporary lid and notice", Labour, "LH"},
	{"patch", "patch concrete", Labour, "LH"},
	{"place-concrete", "place concrete", Labour, "LH"},
	{"cut-opening", "cut an opening in the roof from above", Labour, "LH"},
	{"entrant", "entrant, going in and out of the space, beside the work itself", Labour, "LH"},
	{"attendant", "attendant at the opening, all the time of the entry", Labour, "LH"},
	{"entry-supervisor", "entry supervisor: permit, gas tests, briefing", Labour, "LH"},
	{"gas-meter", "four-gas meter", Equipment, "DAY"},
	{"blower", "ventilation blower with duct", Equipment, "DAY"},
	{"retrieval", "tripod, winch, harness and line", Equipment, "DAY"},
	{"hoist", "tripod or truck hoist with ring grab", Equipment, "DAY"},
	{"ladder", "ladder in the pit", Equipment, "DAY"},
	{"shoring", "shore, box or engineered protection of the pit", Equipment, "DAY"},
	{"excavator", "excavator with operator", Equipment, "HUR"},
	{"concrete-saw", "wet concrete saw or core drill", Equipment, "DAY"},
	{"pump-down", "pump down and haul away", Haulage, "GLL"},
	{"spoil-haul", "haul spoil, loose", Haulage, "YDQ"},
	{"debris-haul", "haul old concrete", Haulage, "LBR"},
	{"locate", "buried lines located", Fee, "EA"},
	{"permit-repair", "permit of the local authority", Fee, "EA"},
	{"permit-entry", "written entry permit with its gas tests", Fee, "EA"},
	{"engineer", "engineer's review", Fee, "EA"},
	{"wait-locate", "wait until buried lines are marked", Wait, "DAY"},
	{"wait-cure", "wait until concrete or bond has cured", Wait, "DAY"},
}

// ItemCodes is every fixed code that a scope line may carry.
func ItemCodes() []ItemCode { return append([]ItemCode(nil), itemCodes[:]...) }
