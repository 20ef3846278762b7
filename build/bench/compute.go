package main

import (
	"context"
	"encoding/json"
	"fmt"
	"time"

	"ceilingwright/core"
)

// recomputes compares a whole plan worked out in the browser with the same
// natively.
func recomputes(ctx context.Context, b *bench) ([]row, error) {
	native := nativeTime(b.plan, time.Second)
	var wasm float64
	err := onOwnPage(ctx, b, func(tab context.Context) error {
		if err := keepPlan(tab, b.plan); err != nil {
			return err
		}
		if err := recompute(tab, 200); err != nil { // until the browser has compiled it well
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
	if err != nil {
		return nil, err
	}
	ratio := wasm / native
	return []row{
		{"whole plan recomputed, browser ÷ native", fmt.Sprintf("%.2f (%.2f ms ÷ %.2f ms)", ratio, wasm, native), "≤ 3", ratio <= 3},
		{"whole plan recomputed in the browser", fmt.Sprintf("%.2f ms", wasm), "< 4 ms", wasm < 4},
	}, nil
}

// nativeTime is the median time in ms of one Compute, over about the given
// time and at least 5 of them.
func nativeTime(plan string, about time.Duration) float64 {
	var times []float64
	for from := time.Now(); len(times) < 5 || time.Since(from) < about; {
		started := time.Now()
		core.Compute([]byte(plan))
		times = append(times, float64(time.Since(started).Microseconds())/1000)
	}
	return median(times)
}

// growth computes ever larger masks. Time for one panel may not grow with
// their number.
func growth(_ context.Context, b *bench) ([]row, error) {
	grids := [][2]int{{6, 5}, {40, 25}, {100, 100}}
	times := make([]float64, len(grids))
	for i, grid := range grids {
		plan, err := planWithGrid(b.plan, grid[0], grid[1])
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
