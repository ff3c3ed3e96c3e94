package browsertest

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// verdictOf is how a reading is judged.
func verdictOf(reading string) string {
	return `document.querySelector("#reading-` + reading + `").dataset.verdict`
}

func TestReadingsAreJudged(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "power/fuse-tap.html")
	p.fill("#reading-feed-contact input", "11.2")
	p.wait(verdictOf("feed-contact") + ` === "stop"`)
	if got := p.text("#reading-feed-contact .judged"); got != "11.2 V is below 12 V" {
		t.Errorf("11.2 V are judged %q", got)
	}
	p.fill("#reading-feed-contact input", "12.6")
	p.wait(verdictOf("feed-contact") + ` === "ok"`)
	p.fill("#reading-feed-drop input", "0.25 V") // a unit of one's own
	p.wait(verdictOf("feed-drop") + ` === "stop"`)
	p.fill("#reading-feed-drop input", "twelve")
	p.wait(verdictOf("feed-drop") + ` === "check"`)
	p.fill("#reading-existing-current input", "4")
	p.wait(`document.querySelector("#reading-existing-current .judged").textContent === "4 A noted"`)
	if mode := eval[string](p, `document.querySelector("#reading-feed-drop input").inputMode`); mode != "decimal" {
		t.Errorf("the phone shows the %q keys for a reading", mode)
	}
	p.reload()
	p.wait(verdictOf("feed-contact") + ` === "ok"`)
	if got := p.value("#reading-feed-contact input"); got != "12.6" {
		t.Errorf("after a reload the reading is %q", got)
	}
}

// A step with a reading out of limits is not ticked before a word is said.
func TestReadingOutOfLimitsWantsAWord(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "power/fuse-tap.html")
	p.fill("#reading-load-contact input", "5")
	p.wait(verdictOf("load-contact") + ` === "stop"`)
	p.tap("#step-7 .tick")
	p.wait(`document.activeElement.matches("#reading-load-contact .word")`)
	if eval[bool](p, `document.querySelector("#step-7 .tick").checked`) {
		t.Error("the step is ticked without a word")
	}
	p.fill("#reading-load-contact .word", "a fan runs on; slot left alone")
	p.tap("#step-7 .tick")
	p.wait(`document.querySelector("#step-7 .tick").checked`)
	p.reload()
	p.wait(`document.querySelector("#step-7 .tick").checked && document.querySelector("#reading-load-contact .word")`)
	if got := p.value("#reading-load-contact .word"); got != "a fan runs on; slot left alone" {
		t.Errorf("after a reload the word is %q", got)
	}
}

// openJob opens a job on the record page.
func openJob(p *tab, root, vehicle string) {
	p.t.Helper()
	p.open(root + "record.html")
	p.fill("#vehicle", vehicle)
	p.tap(".desk form button")
	p.wait(`[...document.querySelectorAll(".jobs [aria-pressed=true]")].some((b) => b.textContent.startsWith(` + js(vehicle) + `))`)
}

// chooseJob goes over to a job that is open.
func chooseJob(p *tab, root, vehicle string) {
	p.t.Helper()
	p.open(root + "record.html")
	p.wait(`document.querySelector(".jobs button")`)
	p.do(`[...document.querySelectorAll(".jobs button")].find((b) => b.textContent.startsWith(` + js(vehicle) + `)).dataset.want = "1"`)
	p.tap(".jobs [data-want]")
	p.wait(`[...document.querySelectorAll(".jobs [aria-pressed=true]")].some((b) => b.textContent.startsWith(` + js(vehicle) + `))`)
}

func TestTwoJobsSideBySide(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/shop/book/").root
	openJob(p, root, "Van 7")
	p.open(root + "power/fuse-tap.html")
	if got := p.text(".job"); !strings.Contains(got, "Van 7") {
		t.Errorf("the sheet is worked for %q", got)
	}
	p.tap("#step-1 .tick")
	p.fill("#reading-feed-contact input", "12.5")
	p.wait(verdictOf("feed-contact") + ` === "ok"`)
	openJob(p, root, "Van 8")
	p.open(root + "power/fuse-tap.html")
	if p.count(".tick:checked") != 0 || p.value("#reading-feed-contact input") != "" {
		t.Error("a new job starts with the ticks of another")
	}
	p.tap("#step-2 .tick")
	p.fill("#reading-parked-current input", "80")
	p.wait(verdictOf("parked-current") + ` === "stop"`)
	p.fill(".notes textarea", "Owner asked for a second key.")
	p.open(root + "record.html")
	shown := p.text("[data-shown]")
	for _, want := range []string{"Van 8", "PW-01", "1 of ", "OUT OF LIMITS", "80 mA", "second key"} {
		if !strings.Contains(shown, want) {
			t.Errorf("the record of Van 8 lacks %q:\n%s", want, shown)
		}
	}
	if strings.Contains(shown, "12.5") {
		t.Error("the record of Van 8 shows a reading of Van 7")
	}
	chooseJob(p, root, "Van 7")
	p.wait(`document.querySelector("[data-shown]").textContent.includes("12.5 V")`)
	p.open(root + "power/fuse-tap.html")
	p.wait(`document.querySelector("#step-1 .tick").checked && !document.querySelector("#step-2 .tick").checked`)
	// Closing a job asks first, and takes its own things alone.
	chooseJob(p, root, "Van 8")
	p.dialogs(true)
	p.do(`document.querySelector(".jobs [aria-pressed=true]").nextElementSibling.dataset.want = "2"`)
	p.tap("[data-want='2']")
	p.wait(`!document.querySelector(".jobs").textContent.includes("Van 8")`)
	chooseJob(p, root, "Van 7")
	p.wait(`document.querySelector("[data-shown]").textContent.includes("12.5 V")`)
}

func TestTwoTabsKeepEachOthersWork(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	openJob(p, root, "Van 7")
	p.open(root + "power/fuse-tap.html")
	other := p.another()
	other.open(root + "power/fuse-tap.html")
	p.tap("#step-1 .tick")
	other.wait(`document.querySelector("#step-1 .tick").checked`)
	other.tap("#step-2 .tick")
	p.wait(`document.querySelector("#step-2 .tick").checked`)
	p.fill("#reading-feed-contact input", "12.4")
	other.wait(`document.querySelector("#reading-feed-contact input").value === "12.4"`)
	other.fill("#reading-load-contact input", "0.2")
	p.wait(`document.querySelector("#reading-load-contact input").value === "0.2"`)
	p.reload()
	other.reload()
	for _, tab := range []*tab{p, other} {
		tab.wait(`document.querySelectorAll(".tick:checked").length === 2 && document.querySelector("#reading-feed-contact input").value === "12.4" && document.querySelector("#reading-load-contact input").value === "0.2"`)
	}
	// A tab stays with its job when another tab opens a new one.
	openJob(other, root, "Van 8")
	p.reload()
	if got := p.text(".job"); !strings.Contains(got, "Van 7") {
		t.Errorf("the first tab went over to %q", got)
	}
	p.tap("#step-3 .tick")
	other.open(root + "power/fuse-tap.html")
	if other.count(".tick:checked") != 0 {
		t.Error("the second tab shows ticks of the first one's job")
	}
}

// downloads makes the browser put what a page saves into a folder.
func downloads(p *tab) string {
	p.t.Helper()
	dir := p.t.TempDir()
	_, err := chromedp.CallBrowser(p.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir,
		BrowserContextID: chromedp.FromContext(p.ctx).BrowserContextID,
	})
	if err != nil {
		p.t.Fatal(err)
	}
	return dir
}

// saved waits for a file with an ending in a folder of downloads.
func saved(t *testing.T, dir, ending string) (name string, data []byte) {
	t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		names, err := filepath.Glob(filepath.Join(dir, "*"+ending))
		if err == nil && len(names) == 1 {
			if data, err = os.ReadFile(names[0]); err == nil && len(data) > 0 {
				return names[0], data
			}
		}
	}
	t.Fatalf("nothing was saved as *%s", ending)
	return "", nil
}

// upload gives a file to a field.
func upload(p *tab, selector, file string) {
	p.t.Helper()
	if err := chromedp.Do(p.ctx, chromedp.SetUploadFiles(chromedp.CSS(selector), []string{file})); err != nil {
		p.t.Fatal(err)
	}
}

func TestRecordSavesAndLoads(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	dir := downloads(p)
	openJob(p, root, "Van 7 Ünit")
	p.open(root + "power/fuse-tap.html")
	p.tap("#step-1 .tick")
	p.fill("#reading-load-contact input", "5")
	p.wait(verdictOf("load-contact") + ` === "stop"`)
	p.fill("#reading-load-contact .word", "fan runs on")
	p.fill(".notes textarea", "Two lines,\nand a \"quote\".")
	p.open(root + "record.html")
	p.tap("[data-do=save]")
	name, data := saved(t, dir, ".json")
	if base := filepath.Base(name); !strings.HasPrefix(base, "record-20") || !strings.Contains(base, "van-7") {
		t.Errorf("the record is saved as %s", base)
	}
	validRecord(t, root, data)
	var record struct {
		Vehicle string
		Sheets  []struct {
			Path  string
			Items map[string]string
		}
	}
	if err := json.Unmarshal(data, &record); err != nil {
		t.Fatal(err)
	}
	if record.Vehicle != "Van 7 Ünit" || len(record.Sheets) != 1 || record.Sheets[0].Items["step-1"] != "done" ||
		!strings.Contains(record.Sheets[0].Items["reading-load-contact"], "fan runs on") {
		t.Errorf("the record lacks something:\n%s", data)
	}
	before := p.text("[data-shown]")
	// Another device, which knows nothing, shows the same.
	q := newTab(t)
	q.open(root + "record.html")
	upload(q, "[data-do=load]", name)
	q.wait(`document.querySelector("[data-said]").textContent.includes("was loaded")`)
	if got := q.text("[data-shown]"); got != before {
		t.Errorf("the loaded record differs:\n%s\n---\n%s", before, got)
	}
	q.open(root + "power/fuse-tap.html")
	q.wait(`document.querySelector("#step-1 .tick").checked && document.querySelector("#reading-load-contact .word").value === "fan runs on"`)
	q.open(root + "record.html")
	refusesJunk(q)
	// Where there is no room the record is not taken by halves.
	q.do(`document.querySelector("[data-said]").textContent = ""; ` + fillStorage)
	upload(q, "[data-do=load]", name)
	q.wait(`document.querySelector("[data-said]").textContent.includes("nothing of it was taken")`)
	if q.count(".jobs li") != 1 {
		t.Error("a record that found no room is a job")
	}
}

// refusesJunk loads what is no record into a record page with one job: each is
// refused, and nothing is lost by it. A path that is an address elsewhere would be
// a link to anywhere.
func refusesJunk(q *tab) {
	t := q.t
	t.Helper()
	for _, content := range []string{
		``, `nonsense`, `null`, `[]`, `{"format":"baybook-record-1","sheets":5}`,
		`{"format":"baybook-record-1","vehicle":"Van 9","date":"yesterday","sheets":[]}`,
		`{"format":"baybook-record-1","vehicle":"Van 9","date":"2026-10-02","sheets":[null]}`,
		`{"format":"baybook-record-1","vehicle":"Van 9","date":"2026-10-02","sheets":[{"path":"javascript:alert(1)//","items":{"note":"x"}}]}`,
		`{"format":"baybook-record-1","vehicle":"Van 9","date":"2026-10-02","sheets":[{"path":"//elsewhere/x","items":{"note":"x"}}]}`,
		`{"format":"baybook-record-1","vehicle":"Van 9","date":"2026-10-02","sheets":[{"path":"power/fuse-tap","items":{"own":"x"}}]}`,
		`{"format":"baybook-record-1","vehicle":"Van 9","date":"2026-10-02","sheets":[{"path":"power/fuse-tap","items":{"note":7}}]}`,
	} {
		junk := filepath.Join(t.TempDir(), "junk.json")
		if err := os.WriteFile(junk, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
		q.do(`document.querySelector("[data-said]").textContent = ""`)
		upload(q, "[data-do=load]", junk)
		q.wait(`document.querySelector("[data-said]").textContent !== ""`)
		if got := q.text("[data-said]"); !strings.Contains(got, "not a record") || q.count(".jobs li") != 1 {
			t.Errorf("%s is taken for a record: %s", content, got)
		}
	}
}

// fillStorage leaves a site no room for anything more.
const fillStorage = `for (let size = 1 << 22; size > 0; size >>= 1) for (let i = 0; ; i++) try { localStorage.setItem("fill" + size + "-" + i, "x".repeat(size)); } catch { break; }`

// validRecord compares a saved record with the schema that the site links to.
func validRecord(t *testing.T, root string, data []byte) {
	t.Helper()
	schema, err := os.ReadFile(filepath.Join(shipped(t), "schemas", "record.json"))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("record.json", doc); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile("record.json")
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled.Validate(value); err != nil {
		t.Errorf("the record does not keep to its schema: %v\n%s", err, data)
	}
	value.(map[string]any)["date"] = "yesterday"
	if compiled.Validate(value) == nil {
		t.Error("the schema takes “yesterday” for a date")
	}
}

// beforeScripts runs a script in every page before its own.
func beforeScripts(p *tab, script string) {
	p.t.Helper()
	call(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
}

func TestFullStorageIsTold(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	p.open(root + "power/fuse-tap.html")
	p.do(fillStorage)
	p.tap("#step-1 .tick")
	p.wait(`document.querySelector(".storage[role=alert]")`)
	if got := p.text(".storage"); !strings.Contains(got, "lost") || !strings.Contains(got, "print") {
		t.Errorf("of full storage is said %q", got)
	}
	if !eval[bool](p, `document.querySelector("#step-1 .tick").checked`) {
		t.Error("the tick does not stand even while the page is open")
	}
}

// A browser that blocks storage throws where it is only named.
func TestBlockedStorageIsTold(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	beforeScripts(p, `for (const name of ["localStorage", "sessionStorage"]) Object.defineProperty(window, name, {get() { throw new DOMException("blocked", "SecurityError"); }});`)
	p.open(root + "power/fuse-tap.html")
	p.tap("#step-1 .tick")
	p.wait(`document.querySelector(".storage[role=alert]")`)
	p.fill("#reading-feed-contact input", "12.6")
	p.wait(verdictOf("feed-contact") + ` === "ok"`)
	if p.count(".storage") != 1 {
		t.Error("it is told more than once")
	}
	p.tap("[data-do=steps]")
	p.wait(current + ` === "before-you-start"`)
	for _, page := range []string{"record.html", "study.html", "index.html"} {
		p.open(root + page)
		p.wait(`document.readyState === "complete"`)
	}
	p.open(root + "record.html")
	p.fill("#vehicle", "Van 7")
	p.tap(".desk form button")
	p.wait(`document.querySelector(".storage[role=alert]")`)
}
