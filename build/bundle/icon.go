package bundle

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/png"
)

// What makes the page installable: a manifest (W3C, Web Application Manifest) and
// icons of the two sizes that phones ask for. They are site/icon.svg drawn small
// enough that a launcher may cut it to a circle: all of it lies within 40 % of the
// side from the middle, the manifest's safe zone.

var (
	paper = color.RGBA{0xf7, 0xf3, 0xea, 0xff}
	ink   = color.RGBA{0x2a, 0x29, 0x26, 0xff}
	wash  = color.RGBA{0xdf, 0xe9, 0xf1, 0xff}
	chalk = color.RGBA{0x2c, 0x5c, 0x86, 0xff}
)

// bar is a filled rectangle of the icon, in its own 32 by 32 units.
type bar struct {
	left, top, right, bottom float64
	fill                     color.RGBA
}

// iconBars are the shapes of icon.svg from back to front: a line round a rectangle
// is a larger one behind a smaller.
var iconBars = []bar{
	{0.8, 2.8, 31.2, 29.2, ink}, {3.2, 5.2, 28.8, 26.8, paper},
	{6, 8, 26, 24, chalk}, {8, 10, 24, 22, wash},
	{15.4, 9, 16.6, 23, chalk}, {7, 15.4, 25, 16.6, chalk},
}

const iconScale = 0.62 // of the side that the 32 units take

// icon draws the icon as a PNG, side by side pixels. A product is made a number of its
// own before it is added to, so that no processor fuses the two.
func icon(side int) []byte {
	picture := image.NewRGBA(image.Rect(0, 0, side, side))
	unit := float64(side) * iconScale / 32
	edge := float64(side) * (1 - iconScale) / 2
	for y := range side {
		for x := range side {
			shade := paper
			for _, b := range iconBars {
				at := func(units float64) float64 { return edge + float64(units*unit) }
				shade = between(shade, b.fill, overlap(x, at(b.left), at(b.right))*overlap(y, at(b.top), at(b.bottom)))
			}
			picture.SetRGBA(x, y, shade)
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, picture); err != nil {
		panic(err) // a buffer takes every write and the size is valid
	}
	return b.Bytes()
}

// overlap is the share of the pixel from at to at+1 that lies between two edges.
func overlap(at int, from, to float64) float64 {
	return max(0, min(float64(at+1), to)-max(float64(at), from))
}

func between(a, b color.RGBA, share float64) color.RGBA {
	mix := func(a, b uint8) uint8 { return uint8(float64(a) + float64((float64(b)-float64(a))*share) + 0.5) }
	return color.RGBA{mix(a.R, b.R), mix(a.G, b.G), mix(a.B, b.B), 0xff}
}

// installable is the manifest with its icons.
func installable() Output {
	output := Output{}
	icons := []map[string]string{}
	for _, side := range []int{192, 512} {
		name := fmt.Sprintf("icon-%d.png", side)
		output = append(output, File{name, icon(side)})
		icons = append(icons, map[string]string{"src": name, "sizes": fmt.Sprintf("%dx%d", side, side), "type": "image/png", "purpose": "any maskable"})
	}
	sheet := fmt.Sprintf("#%02x%02x%02x", paper.R, paper.G, paper.B)
	manifest, err := json.MarshalIndent(map[string]any{
		"name": "Ceilingwright", "short_name": "Ceilingwright", "id": "./", "start_url": "./", "scope": "./",
		"display": "standalone", "background_color": sheet, "theme_color": sheet, "icons": icons,
	}, "", " ")
	if err != nil {
		panic(err) // it is texts alone
	}
	return append(output, File{"manifest.json", append(manifest, '\n')})
}
