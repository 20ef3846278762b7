package browsertest

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/chromium"
	"ceilingwright/build/machine"
	"ceilingwright/build/serve"
)

// screen starts a display nobody looks at, and gives its name.
func screen(t *testing.T) string {
	t.Helper()
	path, err := machine.Display().Find()
	require.NoError(t, err)
	read, write, err := os.Pipe()
	require.NoError(t, err)
	defer read.Close()
	// It picks a free number by itself and writes it once it is ready.
	display := exec.Command(path, "-displayfd", "3", "-screen", "0", "1280x900x24", "-nolisten", "tcp")
	display.ExtraFiles = []*os.File{write}
	require.NoError(t, display.Start())
	write.Close()
	t.Cleanup(func() {
		display.Process.Kill()
		display.Wait()
	})
	var number int
	_, err = fmt.Fscan(read, &number)
	require.NoError(t, err)
	return fmt.Sprintf(":%d", number)
}

// windowed is a browser with a window on that display whose "Save page" goes
// to a folder.
func windowed(t *testing.T, display, folder string) context.Context {
	t.Helper()
	t.Setenv("DISPLAY", display)
	profile := t.TempDir()
	preferences, err := json.Marshal(map[string]any{
		// 1 is "web page, complete".
		"savefile": map[string]any{"default_directory": folder, "type": 1},
		"download": map[string]any{"default_directory": folder},
	})
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll(filepath.Join(profile, "Default"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(profile, "Default", "Preferences"), preferences, 0o644))
	browser, stop, err := chromium.Start(context.Background(), chromedp.UserDataDir(profile), chromedp.VisibleWindow)
	require.NoError(t, err)
	t.Cleanup(stop)
	return browser
}

// savedBy presses Ctrl+S in the browser's window and "Save" in the dialog that
// comes, as a person does, and gives the file that was written.
func savedBy(t *testing.T, folder string) string {
	t.Helper()
	tool, err := machine.Keys().Find()
	require.NoError(t, err)
	press := func(arguments ...string) (string, error) {
		command := exec.Command(tool, arguments...)
		out, err := command.CombinedOutput()
		return string(out), err
	}
	window := func(title string) string {
		windows, err := press("search", "--onlyvisible", "--name", title)
		if err != nil {
			return "" // there is none yet
		}
		return strings.Fields(windows)[0]
	}
	_, err = press("windowfocus", "--sync", window("Ceilingwright"), "key", "--clearmodifiers", "ctrl+s")
	require.NoError(t, err)
	asked := false
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(300 * time.Millisecond) {
		dialog := window("^Save File")
		if asked && dialog == "" {
			break // it has been answered and is gone
		}
		if dialog != "" {
			// It has no window manager to give it the keys, so its button is
			// pressed with the mouse: the last one, in the lower right corner.
			// A dialog that just opened may not listen yet; then it is asked
			// again.
			asked = true
			var wide, high int
			shape, err := press("getwindowgeometry", "--shell", dialog)
			require.NoError(t, err)
			for _, line := range strings.Fields(shape) {
				fmt.Sscanf(line, "WIDTH=%d", &wide)
				fmt.Sscanf(line, "HEIGHT=%d", &high)
			}
			press("mousemove", "--window", dialog, strconv.Itoa(wide-45), strconv.Itoa(high-22), "click", "1")
			time.Sleep(700 * time.Millisecond)
		}
	}
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		names, err := filepath.Glob(filepath.Join(folder, "*.html"))
		require.NoError(t, err)
		parts, err := filepath.Glob(filepath.Join(folder, "*_files", "*"))
		require.NoError(t, err)
		if len(names) == 1 && len(parts) >= 3 {
			return names[0]
		}
	}
	entries, _ := os.ReadDir(folder)
	t.Fatalf("the browser saved no complete page; in the folder are %v", entries)
	return ""
}

// The browser's own "Save page as, complete", done for real: the copy opens
// from disk, starts clean and keeps what was typed.
func TestPageSavedByBrowserWorksFromDisk(t *testing.T) {
	alone(t) // its display is the whole process's
	display := screen(t)
	folder := t.TempDir()
	host := httptest.NewServer(serve.Handler(os.DirFS(dist)))
	v := viewIn(t, windowed(t, display, folder), window{1200, 700})
	v.visit(host.URL + "/" + fragment(painterPlan))
	v.ready()
	v.write("/title", "Saved room")
	v.waitText("4″", figure, "border.DA")
	v.press(`[data-do=working][data-to="border.DA"]`)
	v.write("/room/height", "9 fathoms")
	v.wait(said+`.includes("fathoms")`, "/room/height")
	v.leave()
	before := v.text(plan)
	layout := value[[]int](v, shape)
	path := savedBy(t, folder)
	host.Close() // whatever the copy needs is with it

	content, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.Contains(content, []byte("_files/")), "saved complete")
	copied := anotherDevice(t, desk)
	copied.visit("file://" + path)
	copied.ready()
	copied.waitText("4″", figure, "border.DA")
	assert.Equal(t, before, copied.text(plan))
	assert.Equal(t, "9 fathoms", copied.text(blank+`.value`, "/room/height"))
	assert.Equal(t, layout, value[[]int](copied, shape), "nothing of the saved answers is there twice")
	for _, url := range copied.asked() {
		assert.True(t, strings.HasPrefix(url, "file://"+folder+"/"), url)
	}
	copied.write("/mask/length", "178")
	copied.waitText("5″", figure, "border.DA")
	folder = copied.downloads()
	copied.press(`[data-do=take-along]`)
	name, _ := copied.arrived(folder)
	assert.Equal(t, "saved-room.html", name)
}

// shape counts what would double if a saved answer stayed.
const shape = `[".cw-layer", ".cw-step", ".cw-order li", ".cw-say", ".cw-figure .cw-value", "svg", ".cw-wall-marks", "[data-fill=todo] li", ".cw-note", "option", "script", "[aria-invalid]"].map((s) => document.querySelectorAll(s).length)`
