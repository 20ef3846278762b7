package tell

import (
	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	tellprice "ceilingwright/core/tell/price"
)

// whatIfs prices the job with one thing changed at a time.
func (b *builder) whatIfs() {
	changes := b.Changes()
	for i := range changes {
		b.guarded("what a change would cost", func() {
			if w, ok := b.WhatIf(&changes[i], b.goods); ok {
				tellprice.WhatIf(&b.Page, b.Job, &w)
			}
		})
	}
}

// goods works out what is bought for the steps of a job, on a sheet that nobody sees.
func (b *builder) goods(j *job.Job) {
	v := &builder{Page: b.Page, Job: j, leafDetails: map[int]string{}}
	v.Sheet = &sheet.Sheet{}
	v.priceFinish()
}
