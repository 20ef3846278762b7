package jsondoc

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tree turns a node into what encoding/json would have read.
func tree(n *Node) any {
	switch n.Kind {
	case Bool:
		return n.Text == "true"
	case Number:
		return json.Number(n.Text)
	case String:
		return n.Text
	case List:
		list := []any{}
		for _, item := range n.Items {
			list = append(list, tree(item))
		}
		return list
	case Object:
		object := map[string]any{}
		for _, f := range n.Fields {
			object[f.Name] = tree(f.Value)
		}
		return object
	}
	return nil
}

// outside reads with the standard package, the outside judge.
func outside(data []byte) (any, error) {
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	var v any
	if err := d.Decode(&v); err != nil {
		return nil, err
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, assert.AnError
	}
	return v, nil
}

var texts = []string{
	`{}`, `[]`, `""`, `0`, `-0.5e+10`, `true`, `false`, `null`, ` { "a" : [ 1 , "2" , { } ] } `,
	`{"a":1,"a":2}`, `"\u00e9\ud83d\ude00\ud800x\\\/\b\f\n\r\t"`, "\"9′ 4″\"", "\"\xff\"",
	``, ` `, `{`, `{"a"`, `{"a":`, `{"a":1`, `{"a":1,`, `{"a":1,}`, `[1`, `[1,`, `[,]`, `"abc`, `"a\`, `"\u12`, `"\x"`,
	`01`, `1.`, `1e`, `-`, `+1`, `.5`, `NaN`, `Infinity`, `tru`, `nul`, `{'a':1}`, `{a:1}`, `1 2`, `{} {}`, "\"a\nb\"", "\x00",
	`"\ud83d\ud83d\ude00"`, `"\ud83dA"`,
}

func TestReadJudgesLikeTheStandardPackage(t *testing.T) {
	for _, text := range texts {
		judgeBoth(t, []byte(text))
	}
}

func judgeBoth(t *testing.T, data []byte) {
	want, wantErr := outside(data)
	node, err := Read(data)
	if wantErr != nil {
		assert.Error(t, err, "%q", data)
		return
	}
	if err != nil && strings.Contains(err.Error(), "nested too deep") {
		return
	}
	require.NoError(t, err, "%q", data)
	assert.Equal(t, want, tree(node), "%q", data)
}

func FuzzRead(f *testing.F) {
	for _, text := range texts {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if bytes.HasPrefix(data, []byte("\xEF\xBB\xBF")) {
			t.Skip("the standard package refuses a byte order mark")
		}
		judgeBoth(t, data)
	})
}

func FuzzWriteString(f *testing.F) {
	for _, s := range []string{"", "a\"b\\c", "<script>", "\x00\x1f\x7f", "\u2028\u2029", "\xff\xfe", "9′ 4″", "\b\f\n\r\t"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		var w Writer
		w.String(s)
		var want bytes.Buffer
		e := json.NewEncoder(&want)
		e.SetEscapeHTML(false)
		require.NoError(t, e.Encode(s))
		assert.Equal(t, strings.TrimSuffix(want.String(), "\n"), string(w.Bytes()))
	})
}

func TestReadSaysWhereItStops(t *testing.T) {
	for _, c := range []struct {
		text         string
		line, column int
		cutOff       bool
	}{
		{"{\"a\":1,\n \"é\" 2}", 2, 6, false},
		{"{\"a\":1", 1, 7, true},
		{"[1,2", 1, 5, true},
		{"hello", 1, 1, false},
	} {
		_, err := Read([]byte(c.text))
		var fault *SyntaxError
		require.ErrorAs(t, err, &fault, c.text)
		assert.Equal(t, [3]any{c.line, c.column, c.cutOff}, [3]any{fault.Line, fault.Column, fault.CutOff}, c.text)
	}
}

func TestReadRefusesDeepNesting(t *testing.T) {
	_, err := Read([]byte(strings.Repeat("[", 1_000_000)))
	require.ErrorContains(t, err, "nested too deep")
}

func TestReadPassesOverAByteOrderMark(t *testing.T) {
	node, err := Read([]byte("\xEF\xBB\xBF{}"))
	require.NoError(t, err)
	assert.Equal(t, Object, node.Kind)
}

func TestFieldTicksOffAndTakesTheLast(t *testing.T) {
	node, err := Read([]byte(`{"a":1,"b":2,"a":3}`))
	require.NoError(t, err)
	assert.Equal(t, "3", node.Field("a").Text)
	assert.Nil(t, node.Field("c"))
	assert.True(t, node.Fields[0].Known && node.Fields[0].Repeated)
	assert.False(t, node.Fields[1].Known)
	assert.False(t, node.Fields[2].Repeated)
	var none *Node
	assert.Nil(t, none.Field("a"))
}

func TestWriterPutsTheCommas(t *testing.T) {
	var w Writer
	w.Open('{')
	w.Text("a", "x")
	w.Key("b")
	w.Open('[')
	w.Int(-1)
	w.Bool(true)
	w.Null()
	w.Open('{')
	w.Close('}')
	w.Close(']')
	w.Key("c")
	w.Open('[')
	w.Close(']')
	w.Close('}')
	assert.Equal(t, `{"a":"x","b":[-1,true,null,{}],"c":[]}`, string(w.Bytes()))
}

// Whatever is cut off from a text that is whole, the reader says that it ends
// too early and not that it is wrong.
func TestReadSaysWhenATextIsCutOff(t *testing.T) {
	text := `{"a":[true,false,null,-12.5e+3,"é\u00e9\ud83d\ude00\n\\"],"b":{}}`
	for i := range len(text) {
		_, err := Read([]byte(text[:i]))
		var fault *SyntaxError
		require.ErrorAs(t, err, &fault, text[:i])
		require.True(t, fault.CutOff, "%q: %v", text[:i], err)
	}
}
