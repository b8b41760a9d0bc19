package hostile

// ways is in how many ways the place of a number can be spoiled by a fixed
// value; what follows in badFloat is drawn.
const ways = 20

// mostPlaces is how many places of one set of arguments are spoiled, evenly
// spread over them: a day's inflow has thousands.
const mostPlaces = 100

// sweep spoils the places of some accepted arguments, one at a time and in every
// fixed way. It gives the first fault.
func (r *room) sweep(c *call, rounds int) string {
	for k := range rounds {
		total := r.placesOf(c, r.accepted(c, &choice{drawn(k)}))
		for at := 0; at < total; at += 1 + total/mostPlaces {
			for way := range ways {
				args := r.accepted(c, &choice{drawn(k)})
				r.spoil(c, args, at, &choice{[]byte{byte(way), 0}})
				if fault, _ := r.try(c, args, false); fault != "" {
					return fault
				}
			}
		}
	}
	return ""
}
