package main

import (
	"context"
	"encoding/json"
	"fmt"
	"runtime"
	"time"

	"ceilingwright/core"
	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/plan"
	"ceilingwright/core/setout"
)

// recomputes compares a plan without days and price worked out in the browser
// with the same natively.
func recomputes(ctx context.Context, b *bench) ([]row, error) {
	wasm, native, err := bothTimes(ctx, b, b.plan)
	if err != nil {
		return nil, err
	}
	ratio := wasm / native
	return []row{
		{"whole plan recomputed, browser ÷ native", fmt.Sprintf("%.2f (%.2f ms ÷ %.2f ms)", ratio, wasm, native), "≤ 3", ratio <= 3},
		{"whole plan recomputed in the browser", fmt.Sprintf("%.2f ms", wasm), "< 4 ms", wasm < 4},
	}, nil
}

// job is the largest plan that is promised to follow the typing: the finish in
// ten steps, 60 panels, some sixty days of calendar and the price with what else
// it could be. What it takes from the heap counts twice: in the browser the
// collector shares the one thread.
func job(ctx context.Context, b *bench) ([]row, error) {
	if err := wholeJob(b.job); err != nil {
		return nil, err
	}
	wasm, native, err := bothTimes(ctx, b, b.job)
	if err != nil {
		return nil, err
	}
	ratio := wasm / native
	count, bytes := allocations(func() { core.Compute([]byte(b.job)) })
	more, err := changed(b)
	if err != nil {
		return nil, err
	}
	return append([]row{
		{"job with days and price, native", fmt.Sprintf("%.2f ms", native), "< 2 ms", native < 2},
		{"job with days and price, in the browser", fmt.Sprintf("%.2f ms", wasm), "< 4 ms", wasm < 4},
		{"job with days and price, browser ÷ native", fmt.Sprintf("%.2f", ratio), "≤ 3", ratio <= 3},
		{"taken from the heap for it", fmt.Sprintf("%.0f times, %.2f MB", count, bytes/1e6), "", true},
	}, more...), nil
}

// wholeJob checks that the plan is what the row says it is.
func wholeJob(plan string) error {
	var sheet struct {
		Layers []struct{ Count int }
		Steps  []any
		Days   struct{ Start, Finish string }
		Price  struct{ WhatIf []any }
	}
	if err := json.Unmarshal(core.Compute([]byte(plan)), &sheet); err != nil {
		return err
	}
	panels := 0
	for _, l := range sheet.Layers {
		panels += l.Count
	}
	start, err := time.Parse("2006-01-02T15:04", sheet.Days.Start)
	if err != nil {
		return err
	}
	finish, err := time.Parse("2006-01-02T15:04", sheet.Days.Finish)
	if err != nil {
		return err
	}
	days := int(finish.Sub(start).Hours()/24) + 1
	if panels != 60 || len(sheet.Steps) != 10 || days < 60 || len(sheet.Price.WhatIf) < 3 {
		return fmt.Errorf("the job has %d panels, %d steps, %d days, %d other prices", panels, len(sheet.Steps), days, len(sheet.Price.WhatIf))
	}
	return nil
}

// allocations is how often a deed takes something from the heap, and how many
// bytes, on the average of some.
func allocations(do func()) (count, bytes float64) {
	const times = 20
	do()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for range times {
		do()
	}
	runtime.ReadMemStats(&after)
	return float64(after.Mallocs-before.Mallocs) / times, float64(after.TotalAlloc-before.TotalAlloc) / times
}

// bothTimes are the median times in ms of one Compute in the browser, once it
// has compiled the engine well, and natively.
func bothTimes(ctx context.Context, b *bench, plan string) (wasm, native float64, err error) {
	native = nativeTime(plan, time.Second)
	err = onOwnPage(ctx, b, func(tab context.Context) error {
		if err := keepPlan(tab, plan); err != nil {
			return err
		}
		if err := recompute(tab, 200); err != nil {
			return err
		}
		times, err := evaluate[[]float64](tab, `(async () => {
  const times = [];
  for (let i = 0; i < 60; i++) {
    await new Promise((r) => setTimeout(r));
    const from = performance.now();
    for (let j = 0; j < 5; j++) ceilingwright.compute(watched.plan);
    times.push((performance.now() - from) / 5);
  }
  return times;
})()`)
		wasm = median(times)
		return err
	})
	return wasm, native, err
}

// nativeTime is the median time in ms of one Compute.
func nativeTime(plan string, about time.Duration) float64 {
	return timeOfEach(about, func() { core.Compute([]byte(plan)) })
}

// timeOfEach is the median time in ms of doing something, over about the given
// time and at least 5 times.
func timeOfEach(about time.Duration, do func()) float64 {
	var times []float64
	for from := time.Now(); len(times) < 5 || time.Since(from) < about; {
		started := time.Now()
		do()
		times = append(times, float64(time.Since(started).Microseconds())/1000)
	}
	return median(times)
}

// layout is what follows a reading of the tape: a room out of square worked out
// from six readings, the box set out in it by every choice, all marks, and the
// order of hanging from the places of a platform. The second row is the whole
// sheet of that, without a finish.
func layout(_ context.Context, b *bench) ([]row, error) {
	text, err := planOutOfSquare(b.plan)
	if err != nil {
		return nil, err
	}
	job := plan.Read([]byte(text)).Plan
	if hung := layOut(job); hung != 60 {
		return nil, fmt.Errorf("%d of 60 panels were hung", hung)
	}
	alone := timeOfEach(2*time.Second, func() { layOut(job) })
	whole := nativeTime(text, 2*time.Second)
	return []row{
		{"survey and layout of 2 × 30 panels, out of square, native", fmt.Sprintf("%.2f ms", alone), "< 1 ms", alone < 1},
		{"the same as a sheet, with words and drawings", fmt.Sprintf("%.2f ms", whole), "", true},
	}, nil
}

// layOut works out everything about the layout that is a number, and answers
// how many panels were hung.
func layOut(job plan.Plan) (hung int) {
	n := job.Units.Notation()
	site := setout.Site{Shape: job.Room.Find(n.System).Shape}
	var layers []mask.Layer
	for _, l := range job.Mask.Layers {
		panels, _ := mask.LayerFromCut(job.Mask.Outline, l.Cut)
		layers = append(layers, panels)
	}
	choices, taken := site.Choices(setout.Way{On: job.Setting.On, Square: setout.SquareToRoom}, job.Mask.Outline, job.Setting.LeastBorder, n.Mark())
	if taken < 0 {
		return 0
	}
	site.Marks(choices[taken].Box, layers)
	a := job.Access
	places, _ := hanging.LayoutFor(job.Mask.Outline, hanging.Platform{Length: a.DeckLength, Width: a.DeckWidth, Arm: a.ArmReach, Overlap: a.Overlap, Turn: a.Turn}, hanging.Rect{})
	for _, l := range layers {
		columns, rows := l.Runs(job.Mask.Outline)
		hung += len(hanging.Order(hanging.Job{Columns: columns, Rows: rows, Stations: places.Stations}).Hangs)
	}
	return hung
}

// planOutOfSquare is the plan without its finish, its room measured by four
// sides and two diagonals that are half an inch out of square, and a platform
// that leaves several places to stand at.
func planOutOfSquare(plan string) (string, error) {
	var p map[string]any
	if err := json.Unmarshal([]byte(plan), &p); err != nil {
		return "", err
	}
	p["finish"] = map[string]any{"steps": []any{}}
	room, found := p["room"].(map[string]any)
	access, also := p["access"].(map[string]any)
	if !found || !also {
		return "", fmt.Errorf("the plan has no room or no platform")
	}
	room["form"] = "lines"
	var readings []any
	for _, r := range [][2]string{{"AB", "294"}, {"BC", "231"}, {"CD", "293 3/4"}, {"DA", "231 1/4"}, {"AC", "373 7/8"}, {"BD", "373 3/4"}} {
		readings = append(readings, map[string]any{"line": r[0], "length": r[1] + " in"})
	}
	room["readings"] = readings
	access["deckLength"], access["deckWidth"], access["armReach"], access["overlap"] = "6 ft", "30 in", "18 in", "2 in"
	text, err := json.Marshal(p)
	if err != nil {
		return "", err
	}
	var sheet struct {
		Survey struct{ Proved string }
		Box    struct{ Lines []any }
		Layers []struct{ Stations []any }
	}
	if err := json.Unmarshal(core.Compute(text), &sheet); err != nil {
		return "", err
	}
	if sheet.Survey.Proved != "yes" || len(sheet.Layers) != 2 || len(sheet.Layers[0].Stations) < 2 || len(sheet.Box.Lines) == 0 {
		return "", fmt.Errorf("the engine does not take the room out of square: %+v", sheet.Survey)
	}
	return string(text), nil
}

// growth computes ever larger masks, in a room out of square and hung from a
// platform. Time for one panel may not grow with their number.
func growth(_ context.Context, b *bench) ([]row, error) {
	skew, err := planOutOfSquare(b.plan)
	if err != nil {
		return nil, err
	}
	grids := [][2]int{{6, 5}, {40, 25}, {100, 100}}
	times := make([]float64, len(grids))
	for i, grid := range grids {
		plan, err := planWithGrid(skew, grid[0], grid[1])
		if err != nil {
			return nil, err
		}
		if times[i] = nativeTime(plan, time.Second); times[i] == 0 {
			return nil, fmt.Errorf("%d × %d panels took no time", grid[0], grid[1])
		}
	}
	// Ten times the panels, at most ten times the time; a quarter is allowed
	// for caches and the collector.
	ratio := times[2] / times[1]
	return []row{
		{"30 → 1 000 → 10 000 panels, native", fmt.Sprintf("%.2f → %.1f → %.0f ms", times[0], times[1], times[2]), "", true},
		{"time of 10 000 panels ÷ time of 1 000", fmt.Sprintf("%.1f", ratio), "≤ 12.5", ratio <= 12.5},
		{"10 000 panels usable", fmt.Sprintf("%.0f ms", times[2]), "≤ 1 000 ms", times[2] <= 1000},
	}, nil
}

// planWithGrid gives the plan one layer of columns × rows panels, and checks
// that the engine takes it.
func planWithGrid(plan string, columns, rows int) (string, error) {
	var p map[string]any
	if err := json.Unmarshal([]byte(plan), &p); err != nil {
		return "", err
	}
	mask, found := p["mask"].(map[string]any)
	if !found {
		return "", fmt.Errorf("the plan has no mask")
	}
	layers, found := mask["layers"].([]any)
	if !found || len(layers) == 0 {
		return "", fmt.Errorf("the plan has no layer")
	}
	layer := layers[0].(map[string]any)
	layer["split"], layer["columns"], layer["rows"] = "count", fmt.Sprint(columns), fmt.Sprint(rows)
	mask["layers"] = []any{layer}
	text, err := json.Marshal(p)
	if err != nil {
		return "", err
	}
	var sheet struct{ Layers []struct{ Count int } }
	if err := json.Unmarshal(core.Compute(text), &sheet); err != nil {
		return "", err
	}
	if len(sheet.Layers) != 1 || sheet.Layers[0].Count != columns*rows {
		return "", fmt.Errorf("the engine does not take %d × %d panels", columns, rows)
	}
	return string(text), nil
}
