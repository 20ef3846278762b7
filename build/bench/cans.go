package main

import (
	"context"
	"fmt"
	"slices"
	"time"

	"github.com/shopspring/decimal"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
)

// cans is the search for the cheapest cans that hold 500 L in ten sizes: US and
// metric together with prices and without, and labels to the millilitre.
func cans(context.Context, *bench) ([]row, error) {
	mixed := tenSizes()
	bare := slices.Clone(mixed)
	labels := make([]finish.Can, 0, len(mixed))
	for i, size := range []string{"0.237", "0.473", "0.946", "3.785", "18.927", "0.25", "0.5", "1", "2.5", "5"} {
		bare[i].Priced = false
		labels = append(labels, finish.CanOf(measure.MustNumber(size), measure.UnitLitre))
	}
	var rows []row
	for _, c := range []struct {
		name string
		cans []finish.Can
	}{{"US and metric", mixed}, {"without prices", bare}, {"to the millilitre, without prices", labels}} {
		took, proved := canSearch(c.cans)
		rows = append(rows, row{"cheapest cans for 500 L of ten sizes, " + c.name, fmt.Sprintf("%.2f ms", took), "< 1 ms", took < 1 && proved})
	}
	return rows, nil
}

// tenSizes are the sizes paint is sold in, with invented prices that fall with
// the size.
func tenSizes() []finish.Can {
	var list []finish.Can
	for _, c := range []struct {
		size  string
		unit  measure.VolumeUnit
		price string
	}{
		{"0.5", measure.UnitPint, "8"}, {"1", measure.UnitPint, "13"}, {"1", measure.UnitQuart, "22"}, {"1", measure.UnitGallon, "62"}, {"5", measure.UnitGallon, "270"},
		{"0.25", measure.UnitLitre, "9"}, {"0.5", measure.UnitLitre, "15"}, {"1", measure.UnitLitre, "24"}, {"2.5", measure.UnitLitre, "48"}, {"5", measure.UnitLitre, "82"},
	} {
		list = append(list, finish.CanOf(measure.MustNumber(c.size), c.unit).At(decimal.RequireFromString(c.price)))
	}
	return list
}

// canSearch is the median time of a search in ms, and whether what it found was
// shown to be the best.
func canSearch(cans []finish.Can) (took float64, proved bool) {
	need := measure.Volume{Litres: measure.NumberFromInt(500)}
	var times []float64
	for range 200 {
		began := time.Now()
		found, _, ok := finish.CheapestCans(need, cans)
		times = append(times, float64(time.Since(began).Nanoseconds())/1e6)
		proved = ok && found.Proved
	}
	return median(times), proved
}
