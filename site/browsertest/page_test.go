package browsertest

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"baybook/calculators/calctest"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// engines are the browsers that the tests can drive, both Debian's and of one
// source. The first has no windows to draw and takes half the time.
var engines = []string{"/usr/bin/chromium-headless-shell", "/usr/bin/chromium"}

// chromium finds the browser; a test cannot do without one.
func chromium(t testing.TB) string {
	t.Helper()
	for _, file := range engines {
		if _, err := os.Stat(file); err == nil {
			return file
		}
	}
	calctest.Missing(t, "%s is not there: apt-get install chromium-headless-shell", engines[0])
	return ""
}

// elsewhere is a name of this machine that is not one of the loopback's own,
// so that the browser takes what it serves for plain HTTP from another.
const elsewhere = "bay.test"

// patience is how long a page has for something that it must do.
const patience = 20 * time.Second

// browsers keeps the one browser of all tests.
var browsers struct {
	sync.Mutex
	context context.Context
	close   []context.CancelFunc
}

// started starts the browser at its first call.
func started(t testing.TB) context.Context {
	t.Helper()
	browsers.Lock()
	defer browsers.Unlock()
	if browsers.context != nil {
		return browsers.context
	}
	ctx, close1 := chromedp.NewExecAllocator(context.Background(),
		chromedp.ExecPath(chromium(t)), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.NoDefaultBrowserCheck, chromedp.UserDataDir(filepath.Join(scratch, "profile")),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.Flag("disable-dev-shm-usage", true), chromedp.Flag("force-device-scale-factor", "1"),
		chromedp.Flag("hide-scrollbars", false),
		// Letters keep the places that they have on paper.
		chromedp.Flag("font-render-hinting", "none"),
		chromedp.Flag("host-resolver-rules", "MAP "+elsewhere+" 127.0.0.1"),
	)
	ctx, close2 := chromedp.NewContext(ctx)
	browsers.close = []context.CancelFunc{close2, close1}
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		t.Fatalf("the browser does not start: %v", err)
	}
	browsers.context = ctx
	return ctx
}

func closeBrowsers() {
	browsers.Lock()
	defer browsers.Unlock()
	for _, c := range browsers.close {
		c()
	}
}

// A tab is one page of a browser, with what went wrong in it.
type tab struct {
	t   testing.TB
	ctx context.Context
	// allowed are words of complaints that a test provokes on purpose.
	allowed []string

	mu         sync.Mutex
	complaints []string
	requests   []string
}

// size is a viewport in CSS pixels.
type size struct{ width, height int64 }

var phone = size{360, 740}

// newTab opens a page in a browser profile of its own, at a phone's size.
// Whatever the page complains of, or asks of another address than a site's,
// fails the test.
func newTab(t testing.TB) *tab {
	t.Helper()
	ctx, done := chromedp.NewContext(started(t), chromedp.WithNewBrowserContext())
	t.Cleanup(done)
	return attach(t, ctx)
}

// another opens a second page in the same profile.
func (p *tab) another() *tab {
	p.t.Helper()
	ctx, done := chromedp.NewContext(p.ctx)
	p.t.Cleanup(done)
	return attach(p.t, ctx)
}

func attach(t testing.TB, ctx context.Context) *tab {
	t.Helper()
	p := &tab{t: t, ctx: ctx}
	if err := chromedp.Listen(ctx, p.heard); err != nil {
		t.Fatal(err)
	}
	call(p, network.Enable, network.EnableParams{})
	call(p, log.Enable, cdp.Empty{})
	call(p, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
	p.resize(phone)
	t.Cleanup(p.verdict)
	return p
}

// heard notes errors and requests.
func (p *tab) heard(event any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		p.complaints = append(p.complaints, "exception: "+e.ExceptionDetails.Text+describe(e.ExceptionDetails.Exception))
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeWarning {
			words := "console:"
			for _, a := range e.Args {
				words += " " + describe(a)
			}
			p.complaints = append(p.complaints, words)
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError || e.Entry.Level == log.EntryLevelWarning {
			p.complaints = append(p.complaints, "log: "+e.Entry.Text+" "+e.Entry.URL)
		}
	case *network.EventRequestWillBeSent:
		p.requests = append(p.requests, e.Request.URL)
	}
}

func describe(o *runtime.RemoteObject) string {
	if o == nil {
		return ""
	}
	return " " + o.Description + string(o.Value)
}

// leaving is what a page complains of whose server ends while its worker is
// still being fetched, as at the end of a short test.
const leaving = "An unknown error occurred when fetching the script"

// verdict fails the test for what was heard.
func (p *tab) verdict() {
	p.mu.Lock()
	defer p.mu.Unlock()
next:
	for _, c := range p.complaints {
		for _, a := range append(p.allowed, leaving) {
			if strings.Contains(c, a) {
				continue next
			}
		}
		p.t.Errorf("the page complains: %s", c)
	}
	for _, r := range p.requests {
		if !strings.HasPrefix(r, "http://127.0.0.1:") && !strings.HasPrefix(r, "http://"+elsewhere+":") && !strings.HasPrefix(r, "file:///") && !strings.HasPrefix(r, "data:") && !strings.HasPrefix(r, "blob:") && !strings.HasPrefix(r, "about:") {
			p.t.Errorf("a request leaves the site: %s", r)
		}
	}
}

// resize sets the viewport.
func (p *tab) resize(s size) {
	p.t.Helper()
	if err := chromedp.Do(p.ctx, chromedp.EmulateViewport(s.width, s.height)); err != nil {
		p.t.Fatal(err)
	}
}

// open loads an address and waits for its scripts.
func (p *tab) open(url string) {
	p.t.Helper()
	ctx, done := context.WithTimeout(p.ctx, patience)
	defer done()
	if err := chromedp.Do(ctx, chromedp.Navigate(url)); err != nil {
		p.t.Fatalf("%s: %v", url, err)
	}
}

// reload loads the page again.
func (p *tab) reload() {
	p.t.Helper()
	ctx, done := context.WithTimeout(p.ctx, patience)
	defer done()
	if err := chromedp.Do(ctx, chromedp.Reload()); err != nil {
		p.t.Fatal(err)
	}
}

// eval runs JavaScript in the page and reads its value; a promise is awaited.
func eval[T any](p *tab, script string) T {
	p.t.Helper()
	v, err := tryEval[T](p, script)
	if err != nil {
		p.t.Fatalf("%s: %v", script, err)
	}
	return v
}

func tryEval[T any](p *tab, script string) (T, error) {
	ctx, done := context.WithTimeout(p.ctx, 5*patience)
	defer done()
	var v T
	raw, err := chromedp.Run(ctx, chromedp.Evaluate[[]byte]("(async () => ("+script+"))()", chromedp.EvalAwaitPromise))
	if err != nil || len(raw) == 0 {
		return v, err
	}
	return v, json.Unmarshal(raw, &v)
}

// do runs JavaScript whose value nobody wants.
func (p *tab) do(script string) {
	p.t.Helper()
	if _, err := tryEval[any](p, "(() => {"+script+"})()"); err != nil {
		p.t.Fatalf("%s: %v", script, err)
	}
}

// wait waits until an expression is true in the page.
func (p *tab) wait(condition string) {
	p.t.Helper()
	var err error
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		var ok bool
		if ok, err = tryEval[bool](p, "!!("+condition+")"); ok {
			return
		}
	}
	where, _ := tryEval[string](p, "location.href")
	p.t.Fatalf("%s: in %v this never came true: %s (%v)", where, patience, condition, err)
}

// call sends one command of the browser's protocol.
func call[P, R any](p *tab, command cdp.Command[P, R], params P) R {
	p.t.Helper()
	r, err := chromedp.Call(p.ctx, command, params)
	if err != nil {
		p.t.Fatal(err)
	}
	return r
}

// js quotes a word for a script.
func js(s string) string {
	b, _ := json.Marshal(s) // strings always marshal
	return string(b)
}

// text is what an element says to the eye.
func (p *tab) text(selector string) string {
	p.t.Helper()
	p.wait(fmt.Sprintf("document.querySelector(%s)", js(selector)))
	return eval[string](p, fmt.Sprintf("document.querySelector(%s).innerText", js(selector)))
}

// value is what a field holds.
func (p *tab) value(selector string) string {
	p.t.Helper()
	return eval[string](p, fmt.Sprintf("document.querySelector(%s).value", js(selector)))
}

// count says how many elements match.
func (p *tab) count(selector string) int {
	p.t.Helper()
	return eval[int](p, fmt.Sprintf("document.querySelectorAll(%s).length", js(selector)))
}

// seen counts the matching elements that are shown.
func (p *tab) seen(selector string) int {
	p.t.Helper()
	return eval[int](p, fmt.Sprintf("[...document.querySelectorAll(%s)].filter((e) => e.checkVisibility()).length", js(selector)))
}

// tap brings an element into the middle of the screen and clicks it, as a
// thumb would: what lies over it takes the click, and that is a fault.
func (p *tab) tap(selector string) {
	p.t.Helper()
	p.wait(fmt.Sprintf("document.querySelector(%s)?.checkVisibility()", js(selector)))
	at := eval[struct {
		X, Y float64
		Hit  string
	}](p, fmt.Sprintf(`(() => {
		const e = document.querySelector(%s);
		e.scrollIntoView({block: "center", behavior: "instant"});
		const r = e.getClientRects()[0];
		const x = r.left + r.width / 2, y = r.top + r.height / 2;
		const top = document.elementFromPoint(x, y);
		return {x, y, hit: top && (e.contains(top) || top.contains(e) || top.closest("label")?.contains(e)) ? "" : top ? top.outerHTML.slice(0, 120) : "nothing"};
	})()`, js(selector)))
	if at.Hit != "" {
		p.t.Fatalf("%s cannot be tapped at %.0f, %.0f: there lies %s", selector, at.X, at.Y, at.Hit)
	}
	if err := chromedp.Do(p.ctx, chromedp.MouseClickXY(at.X, at.Y)); err != nil {
		p.t.Fatal(err)
	}
}

// key presses keys, as kb names the special ones.
func (p *tab) key(keys string) {
	p.t.Helper()
	if err := chromedp.Do(p.ctx, chromedp.KeyEvent(keys)); err != nil {
		p.t.Fatal(err)
	}
}

// fill taps a field and types over what it holds.
func (p *tab) fill(selector, words string) {
	p.t.Helper()
	p.tap(selector)
	p.do(fmt.Sprintf("document.querySelector(%s).select?.()", js(selector)))
	if words == "" {
		words = kb.Backspace
	}
	p.key(words)
}

// choose picks an option of a list, with the events that a person causes.
func (p *tab) choose(selector, option string) {
	p.t.Helper()
	p.do(fmt.Sprintf(`const e = document.querySelector(%s); e.focus(); e.value = %s;
		e.dispatchEvent(new Event("input", {bubbles: true})); e.dispatchEvent(new Event("change", {bubbles: true}))`, js(selector), js(option)))
}

// dialogs answers every question that the page asks in a box of its own.
func (p *tab) dialogs(accept bool) {
	events := chromedp.Events(p.ctx, page.JavascriptDialogOpening)
	go func() {
		for _, err := range events {
			if err != nil {
				return
			}
			if _, err := chromedp.Call(p.ctx, page.HandleJavaScriptDialog, page.HandleJavaScriptDialogParams{Accept: accept}); err != nil {
				return
			}
		}
	}()
}
