package bundle

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The fixture's engine is no real one: bundling does not look inside.
var engine = []byte("\x00asm and so on </script> <!--hole:plan-->")

const glue = `globalThis.Go = class {};`

func fixture(t *testing.T) Output {
	output, err := assemble(filepath.Join("testdata", "site"), glue, "You may pass it on.", engine, []byte("{}"), nil)
	require.NoError(t, err)
	output, err = output.withWorker(filepath.Join("testdata", "site"))
	require.NoError(t, err)
	return sorted(output)
}

func content(t *testing.T, output Output, prefix, suffix string) string {
	f, found := output.Find(prefix, suffix)
	require.True(t, found, "%s…%s", prefix, suffix)
	return string(f.Content)
}

func TestHostedPageNamesItsAssets(t *testing.T) {
	output := fixture(t)
	index := content(t, output, "index", ".html")
	assert.NotContains(t, index, "{{")
	for _, kind := range [][2]string{{"assets/page-", ".css"}, {"assets/page-", ".js"}, {"assets/engine-", ".wasm"}, {"assets/carrier-", ".js"}} {
		f, found := output.Find(kind[0], kind[1])
		require.True(t, found, kind)
		assert.Contains(t, index, `"`+f.Path+`"`)
	}
}

func TestHostedPageHasNoInlineScript(t *testing.T) {
	index := content(t, fixture(t), "index", ".html")
	for _, script := range regexp.MustCompile(`<script[^>]*>`).FindAllString(index, -1) {
		data := strings.Contains(script, `type="application/json"`)
		assert.True(t, data || strings.Contains(script, "src="), script)
		assert.NotContains(t, script, `type="module"`, "a page saved to disk may not load modules")
	}
}

// unpacked opens base64 of gzip, as the page does.
func unpacked(t *testing.T, text string) []byte {
	raw, err := base64.StdEncoding.DecodeString(text)
	require.NoError(t, err)
	r, err := gzip.NewReader(bytes.NewReader(raw))
	require.NoError(t, err)
	all, err := io.ReadAll(r)
	require.NoError(t, err)
	return all
}

func block(t *testing.T, page, id string) string {
	m := regexp.MustCompile(`<script type="[a-z/]+" id="` + id + `">([^<]*)</script>`).FindStringSubmatch(page)
	require.NotNil(t, m, id)
	return m[1]
}

func TestSingleFileCarriesEngineAndItsOwnTemplate(t *testing.T) {
	page := content(t, fixture(t), "ceilingwright", ".html")
	assert.Equal(t, engine, unpacked(t, block(t, page, "engine")))
	assert.Empty(t, block(t, page, "plan"))
	template := string(unpacked(t, block(t, page, "page")))
	again, err := single(template, engine, "")
	require.NoError(t, err)
	assert.Equal(t, page, again, "a copy made from a copy is the same file")
}

func TestSingleFileAsksForNothing(t *testing.T) {
	page := content(t, fixture(t), "ceilingwright", ".html")
	outside := regexp.MustCompile(`(?i)<[a-z]+[^>]*\s(src|href)="([^"]*)"`)
	for _, m := range outside.FindAllStringSubmatch(page, -1) {
		assert.True(t, strings.HasPrefix(m[2], "data:") || strings.HasPrefix(m[2], "#"), m[0])
	}
	assert.NotContains(t, page, "assets/")
	assert.Contains(t, page, `<meta charset="utf-8">`+"\n"+`<meta http-equiv="Content-Security-Policy"`)
}

func TestPolicyOfTheSingleFileHasTheHashesOfItsInlineParts(t *testing.T) {
	page := content(t, fixture(t), "ceilingwright", ".html")
	script := regexp.MustCompile(`(?s)<script>(.*?)</script>`).FindStringSubmatch(page)
	style := regexp.MustCompile(`(?s)<style>(.*?)</style>`).FindStringSubmatch(page)
	require.NotNil(t, script)
	require.NotNil(t, style)
	assert.Contains(t, page, "script-src "+hashSource(script[1])+" 'wasm-unsafe-eval'; style-src "+hashSource(style[1])+";")
	assert.NotContains(t, page, "unsafe-inline")
}

// The hash of an empty script, which the policy's own standard would give:
// SHA-256 of nothing (FIPS 180-4 example).
func TestHashSource(t *testing.T) {
	assert.Equal(t, "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='", hashSource(""))
}

func TestHostilePlanStaysData(t *testing.T) {
	page := content(t, fixture(t), "ceilingwright", ".html")
	template := string(unpacked(t, block(t, page, "page")))
	for _, words := range []string{
		"</script><script>alert(1)</script>", "<!--", "-->", "]]>", "<!--hole:engine-->", "<!--hole:page--><!--hole:plan-->",
		"$& $1 $` $'", "{{page.js}}", "\\u003c", "\u2028\u2029", `"};alert(1);//`,
	} {
		plan, err := json.Marshal(map[string]string{"title": words})
		require.NoError(t, err)
		filled, err := single(template, engine, string(plan))
		require.NoError(t, err)
		var got map[string]string
		require.NoError(t, json.Unmarshal([]byte(block(t, filled, "plan")), &got))
		assert.Equal(t, words, got["title"])
		assert.Equal(t, strings.Count(page, "<script"), strings.Count(filled, "<script"), words)
		assert.Equal(t, block(t, page, "engine"), block(t, filled, "engine"))
	}
}

func TestCarrierGivesEngineAndTemplate(t *testing.T) {
	output := fixture(t)
	text := content(t, output, "assets/carrier-", ".js")
	m := regexp.MustCompile(`^globalThis\.ceilingwrightCarrier=\{engine:"([A-Za-z0-9+/=]+)",page:"([A-Za-z0-9+/=]+)"\};$`).FindStringSubmatch(text)
	require.NotNil(t, m)
	assert.Equal(t, engine, unpacked(t, m[1]))
	assert.Equal(t, block(t, content(t, output, "ceilingwright", ".html"), "page"), m[2])
}

func TestSameSourceSameBytes(t *testing.T) {
	assert.Equal(t, fixture(t).Hash(), fixture(t).Hash())
}

func TestHashSeesPathAndContent(t *testing.T) {
	a := Output{{"a", []byte("bc")}}
	assert.NotEqual(t, a.Hash(), Output{{"ab", []byte("c")}}.Hash())
	assert.NotEqual(t, a.Hash(), Output{{"a", []byte("bd")}}.Hash())
	assert.NotEqual(t, a.Hash(), Output{{"a", []byte("bc")}, {"b", nil}}.Hash())
}

func TestFillIsOnePass(t *testing.T) {
	got, err := fill("<A> and <B>", []hole{{"<A>", "<B>$1"}, {"<B>", "<A>"}})
	require.NoError(t, err)
	assert.Equal(t, "<B>$1 and <A>", got)
	_, err = fill("<A>", []hole{{"<A>", ""}, {"<B>", ""}})
	assert.EqualError(t, err, "<B> is missing from the page")
}

func TestTemplateRefusesWhatItCannotHold(t *testing.T) {
	index, err := putTogether(os.DirFS(filepath.Join("testdata", "site")), []byte("{}"))
	require.NoError(t, err)
	for _, row := range []struct{ name, index, style, script, want string }{
		{"script ends itself", index, "", "a='</SCRIPT>'", `holds "</script"`},
		{"script opens a comment", index, "", "a='<!--'", `holds "<!--"`},
		{"style ends itself", index, "a{content:'</style>'}", "", `holds "</style"`},
		{"line end that a parser changes", index, "", "a\r\nb", `holds "\r"`},
		{"licence ends its block", index, "", "", "a licence has a <"},
		{"no plan block", strings.Replace(index, ` id="plan"`, "", 1), "", "", `<script id="plan"> 0 times`},
		{"two plan blocks", strings.Replace(index, "</body>", `<script id="plan"></script></body>`, 1), "", "", `<script id="plan"> 2 times`},
		{"no style", strings.Replace(index, "{{page.css}}", "x.css", 1), "", "", "the style's <link> 0 times"},
		{"spelled-out hole", strings.Replace(index, "<output", "<!--hole:page--><output", 1), "", "", "<!--hole:page--> stands 2 times"},
	} {
		licences := "terms"
		if row.name == "licence ends its block" {
			licences = "terms </script>"
		}
		_, err := singleTemplate(row.index, row.style, row.script, licences)
		assert.ErrorContains(t, err, row.want, row.name)
	}
}

// The terms of all that is compiled in go along with the page and stand in the
// single file.
func TestLicencesGoAlong(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	toolchain, err := ToolchainAt(root)
	require.NoError(t, err)
	terms, err := toolchain.Licences(root, "./wasm")
	require.NoError(t, err)
	for _, part := range []string{"The Go Authors", "github.com/hack-pad/safejs", "Apache License", "github.com/shopspring/decimal", "The MIT License"} {
		assert.Contains(t, terms, part)
	}
	assert.NotContains(t, terms, "testify", "what only the tests use is not inside")
	assert.NotContains(t, terms, toolchain.Root, "no folder of this machine is named")
	assert.Contains(t, content(t, fixture(t), "ceilingwright", ".html"), `id="licences">`+"\nYou may pass it on.")
	_, err = licenceIn(t.TempDir())
	assert.ErrorContains(t, err, "no licence in")
}

func TestIconFromOutsideIsRefused(t *testing.T) {
	_, err := icons(filepath.Join("testdata", "site"), `<link rel="icon" href="../icon.svg">`)
	assert.ErrorContains(t, err, "is not an .svg file of the site's folder")
}

func TestBrokenScriptStopsTheBuild(t *testing.T) {
	site := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(site, "src", "entry"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(site, "src", "entry", "page.ts"), []byte("const = 1"), 0o644))
	_, err := pageScript(site, glue)
	assert.ErrorContains(t, err, "page.ts:1")
}

func TestEngineOfAnotherGoIsRefused(t *testing.T) {
	toolchain := Toolchain{Version: "go1.26.8"}
	assert.NoError(t, toolchain.checkEngine([]byte("…go1.26.8…")))
	assert.ErrorContains(t, toolchain.checkEngine([]byte("…go1.25.0…")), "not built by go1.26.8")
}

func TestGlueComesFromTheToolchain(t *testing.T) {
	toolchain, err := ToolchainAt(".")
	require.NoError(t, err)
	text, err := toolchain.Glue()
	require.NoError(t, err)
	assert.Contains(t, text, "globalThis.Go = class")
}

func TestWriteReplacesAnEarlierBuildOnly(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "dist")
	output := fixture(t)
	require.NoError(t, output.Write(folder))
	stale := filepath.Join(folder, "assets", "page-old.js")
	require.NoError(t, os.WriteFile(stale, nil, 0o644))
	require.NoError(t, output.Write(folder))
	assert.NoFileExists(t, stale)
	for _, f := range output {
		got, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(f.Path)))
		require.NoError(t, err)
		assert.Equal(t, f.Content, got)
	}

	other := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(other, "letters.txt"), nil, 0o644))
	assert.ErrorContains(t, output.Write(other), "holds other files")
	assert.FileExists(t, filepath.Join(other, "letters.txt"))
}

func TestRootIsFoundFromAnyFolder(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	assert.FileExists(t, filepath.Join(root, "go.mod"))
	t.Chdir(t.TempDir())
	_, err = Root()
	assert.Error(t, err)
}
