package job

import "ceilingwright/core/finish"

// WorkOutFinish works out what the steps cover and take, how leaf is divided, and what is
// bought and mixed for them.
func (j *Job) WorkOutFinish() {
	j.buyFinish(true)
	j.LookUnderLeaf()
}

// buyFinish works out what is bought for the steps, and with mixing what is mixed.
func (j *Job) buyFinish(mixing bool) {
	j.takeOffAll()
	for i := range j.Plan.Steps {
		switch kind := j.Plan.Steps[i].Kind; {
		case kind.IsLiquid():
			j.BuyCans(i)
			if mixing {
				j.Mix(i)
			}
		case kind == finish.LeafLaying:
			j.LayLeaf(i)
		}
	}
}

// takeOffAll works out what all steps take, since some are bought together.
func (j *Job) takeOffAll() {
	j.CoverSteps()
	j.ReadHours()
	j.Gild()
	j.BeginFinish()
	for i := range j.Plan.Steps {
		if j.IsSpread(i) {
			j.TakeOff(i)
		}
	}
	j.ShareMaterials()
	j.ReadRecipes()
}

// PriceJob works out the price, and what it would be with one thing changed.
func (j *Job) PriceJob() {
	j.BuyLeafTogether()
	j.MakePrice()
	if !j.Price.Known {
		return
	}
	changes := j.Changes()
	for i := range changes {
		if w, ok := j.WhatIf(&changes[i]); ok {
			j.WhatIfs = append(j.WhatIfs, w)
		}
	}
}
