package main

import (
	"fmt"
	"strings"
	"time"

	"ceilingwright/core"
)

// edit is one blank of the job typed over, back and forth.
type edit struct {
	what, page, from, to string
	most                 float64 // ms
}

// edits are what is typed most. A shorter mask changes almost all there is.
var edits = []edit{
	{"a changed rate", "price", `"rate": "46"`, `"rate": "47"`, 0.3},
	{"a changed border", "setting", `"leastBorder": "6\""`, `"leastBorder": "7\""`, 1},
	{"a shorter mask", "mask", `"length": "20' 8\""`, `"length": "20' 6\""`, 2},
	{"a first step of more coats", "finish", `"coats": "2"`, `"coats": "3"`, 1},
}

// changed is how long a session takes over each edit of the job, natively, to tell the
// page that it is on: what the edit leaves as it is, is kept.
func changed(b *bench) ([]row, error) {
	var rows []row
	for _, e := range edits {
		other := strings.Replace(b.job, e.from, e.to, 1)
		if other == b.job {
			return nil, fmt.Errorf("the job has no %s to change", e.from)
		}
		var session core.Session
		texts, turn := [2][]byte{[]byte(b.job), []byte(other)}, 0
		took := timeOfEach(time.Second, func() {
			session.Sheet(texts[turn%2], e.page, "")
			turn++
		})
		rows = append(rows, row{"job, " + e.what + ", native", fmt.Sprintf("%.2f ms", took), fmt.Sprintf("≤ %.1f ms", e.most), took <= e.most})
	}
	return rows, nil
}
