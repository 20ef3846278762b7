package slim

// column is one number of 32 bits in every row of a table: the first at from,
// one more every stride bytes, the last before to. Offsets are those of the
// image.
//
// A compressor finds repetition and nothing else: a column that counts 1, 2, 3
// costs it as much as noise. So each number of a column is replaced by what it
// exceeds the one before by, less step, and the module sums it up again before
// anything else runs (start.go). Whatever stands there comes back exactly,
// foreseen or not: what is foreseen becomes zeros.
type column struct {
	from, to, stride, step int
}

// take replaces the numbers by their differences.
func (c column) take(bytes []byte) {
	if c.from >= c.to {
		return
	}
	for at := c.from + (c.to-1-c.from)/c.stride*c.stride; at > c.from; at -= c.stride {
		put(bytes, at, u32(bytes, at)-u32(bytes, at-c.stride)-c.step)
	}
}

// sum is take undone, as the module does it.
func (c column) sum(bytes []byte) {
	for at := c.from + c.stride; at < c.to; at += c.stride {
		put(bytes, at, u32(bytes, at)+u32(bytes, at-c.stride)+c.step)
	}
}

const (
	// findfunctab has a bucket of 20 bytes for every 4096 pcs (runtime/symtab.go,
	// findfuncbucket), and a function has 1<<16 pcs (cmd/link/internal/wasm,
	// assignAddress): 16 buckets, which say the same.
	bucketSize       = 20
	bucketsPerTarget = 16
)

// columns are those of the tables, once packFuncs has given every _func the
// same size: the numbers of the functions, thrice, and where each _func is.
func (t tables) columns(size int) []column {
	index := t.atFuncs
	records := index + t.firstFunc()
	all := []column{
		{index, index + 8*t.count, 8, 1},        // functab.entryoff
		{index + 4, index + 8*t.count, 8, size}, // functab.funcoff
		{records + fieldEntry, records + size*t.count, size, 1},
	}
	const row = bucketsPerTarget * bucketSize
	for bucket := range bucketsPerTarget {
		// findfuncbucket.idx
		all = append(all, column{t.atFind + bucket*bucketSize, t.atFind + len(t.find), row, 1})
	}
	return all
}
