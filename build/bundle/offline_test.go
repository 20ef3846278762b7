package bundle

import (
	"bytes"
	"encoding/json"
	"image"
	"image/png"
	"math"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The worker keeps the page and each of its assets, with the hash of what is
// published, and nothing else; page and worker are of one version.
func TestWorkerKeepsThePageAndItsAssets(t *testing.T) {
	output := fixture(t)
	worker := content(t, output, "offline", ".js")
	list := regexp.MustCompile(`\[\[".*?"\]\]`).FindString(worker)
	var files [][2]string
	require.NoError(t, json.Unmarshal([]byte(list), &files), worker)
	want := map[string]string{"./": integrity([]byte(content(t, output, "index", ".html")))}
	for _, f := range output {
		if len(f.Path) > 7 && f.Path[:7] == "assets/" {
			want[f.Path] = integrity(f.Content)
		}
	}
	got := map[string]string{}
	for _, f := range files {
		got[f[0]] = f[1]
	}
	assert.Len(t, got, 5)
	assert.Equal(t, want, got)
	version := regexp.MustCompile(`data-version="([0-9a-f]{12})"`).FindStringSubmatch(content(t, output, "index", ".html"))
	require.NotNil(t, version)
	assert.Contains(t, worker, `"`+version[1]+`"`)
}

// SHA-256 of nothing (FIPS 180-4 example), as Subresource Integrity writes it.
func TestIntegrity(t *testing.T) {
	assert.Equal(t, "sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=", integrity(nil))
}

func TestVersionChangesWithThePage(t *testing.T) {
	assert.Equal(t, versionOf("page"), versionOf("page"))
	assert.NotEqual(t, versionOf("page"), versionOf("page!"))
}

// A single file is not installed and has no version that a worker could tell.
func TestSingleFileNamesNoWorker(t *testing.T) {
	page := content(t, fixture(t), "ceilingwright", ".html")
	assert.NotContains(t, page, `rel="manifest"`)
	assert.Contains(t, page, `data-version=""`)
}

func TestManifestNamesIconsOfTheSizesItSays(t *testing.T) {
	output := installable()
	var manifest struct {
		StartURL string `json:"start_url"`
		Display  string
		Icons    []struct{ Src, Sizes, Purpose string }
	}
	require.NoError(t, json.Unmarshal([]byte(content(t, output, "manifest", ".json")), &manifest))
	assert.Equal(t, "./", manifest.StartURL)
	assert.Equal(t, "standalone", manifest.Display)
	sides := map[string]int{"192x192": 192, "512x512": 512}
	require.Len(t, manifest.Icons, len(sides))
	for _, i := range manifest.Icons {
		picture, err := png.Decode(bytes.NewReader([]byte(content(t, output, i.Src, ""))))
		require.NoError(t, err)
		assert.Equal(t, image.Pt(sides[i.Sizes], sides[i.Sizes]), picture.Bounds().Size(), i.Src)
	}
}

// A launcher may cut the icon to a circle of four fifths of its side (Web Application
// Manifest, "safe zone"): outside of it there is only paper, inside there is more.
func TestIconLiesWithinTheSafeZone(t *testing.T) {
	picture, err := png.Decode(bytes.NewReader(icon(192)))
	require.NoError(t, err)
	shades := map[any]int{}
	for y := range 192 {
		for x := range 192 {
			shade := picture.At(x, y)
			shades[shade]++
			if math.Hypot(float64(x)+0.5-96, float64(y)+0.5-96) > 0.4*192+1 {
				require.Equal(t, any(paper), any(shade), "%d, %d", x, y)
			}
		}
	}
	for _, shade := range []any{paper, ink, wash, chalk} {
		assert.Greater(t, shades[shade], 100)
	}
	assert.Equal(t, any(chalk), any(picture.At(96, 96)), "the seams cross in the middle")
}
