package main

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"github.com/andybalholm/brotli"
)

// sizes compares what a first visit loads with the bare runtime, both as a
// host sends them (brotli, RFC 7932). The engine is rewritten to be small, the
// bare runtime is as the linker leaves it.
func sizes(_ context.Context, b *bench) ([]row, error) {
	bare, err := compressed(b.bare)
	if err != nil {
		return nil, err
	}
	var engine, page int
	for _, f := range b.output {
		if !firstLoad(f.Path) {
			continue
		}
		n, err := compressed(f.Content)
		if err != nil {
			return nil, err
		}
		if strings.HasSuffix(f.Path, ".wasm") {
			engine += n
		} else {
			page += n
		}
	}
	ratio := float64(engine+page) / float64(bare)
	return []row{
		{"engine + page on first load ÷ bare runtime, brotli", fmt.Sprintf("%.2f (%d kB + %d kB ÷ %d kB)", ratio, engine/1000, page/1000, bare/1000), "≤ 2.0", ratio <= 2},
		{"engine alone, brotli", fmt.Sprintf("%d kB", engine/1000), "≤ 1 250 kB", engine <= 1_250_000},
		{"page alone, brotli", fmt.Sprintf("%.1f kB", float64(page)/1000), "≤ 30 kB", page <= 30_000},
	}, nil
}

// firstLoad says whether a visit loads the file. The carrier and the single
// file are loaded only when asked for.
func firstLoad(path string) bool {
	return path == "index.html" || path == "icon.svg" ||
		strings.HasPrefix(path, "assets/") && !strings.HasPrefix(path, "assets/carrier-")
}

func compressed(content []byte) (int, error) {
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, brotli.BestCompression)
	if _, err := w.Write(content); err != nil {
		return 0, err
	}
	if err := w.Close(); err != nil {
		return 0, err
	}
	return b.Len(), nil
}
