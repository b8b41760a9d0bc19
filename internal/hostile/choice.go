package hostile

import (
	"encoding/binary"
	"math/rand/v2"
)

// choice is a string of decisions, read from bytes so that a fuzzer can vary
// them one by one. Past the end every decision is 0, the harmless one.
type choice struct{ data []byte }

// of is a decision between n ways.
func (c *choice) of(n int) int {
	if n < 2 || len(c.data) < 2 {
		return 0
	}
	x := binary.LittleEndian.Uint16(c.data)
	c.data = c.data[2:]
	return int(x) % n
}

// drawn are the decisions of case i of a test.
func drawn(i int) []byte {
	rng := rand.New(rand.NewPCG(uint64(i), 10))
	data := make([]byte, 0, 128)
	for len(data) < cap(data) {
		data = binary.LittleEndian.AppendUint64(data, rng.Uint64())
	}
	return data
}
