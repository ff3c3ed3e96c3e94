package browsertest

import (
	"slices"
	"testing"

	"github.com/chromedp/cdproto/emulation"

	"baybook/calculators"
)

// keyTimes types a digit into the first field of a calculator's page so many
// times and gives how long each took in ms, from the key to a page laid out.
const keyTimes = `(async () => {
	const section = document.querySelector(".calculator"), field = section.querySelector("form input");
	const first = field.value, all = [];
	for (let i = 0; i < 40; i++) {
		field.value = i % 2 ? first : first.replace(/\d+/, (n) => Number(n) + 1);
		const before = performance.now();
		field.dispatchEvent(new Event("input", { bubbles: true }));
		for (let k = 0; k < 50 && section.dataset.state === "waiting"; k++) await null;
		section.getBoundingClientRect();
		all.push(performance.now() - before);
		await new Promise((done) => setTimeout(done, 5));
	}
	return all;
})()`

// BenchmarkKey reports what a key costs on each calculator's page and in the
// search field, in ms, on a processor made four times slower.
func BenchmarkKey(b *testing.B) {
	p := newTab(b)
	root := serve(b, shipped(b), "/").root
	slow := func(rate float64) {
		call(p, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: rate})
	}
	for _, c := range calculators.All {
		b.Run(c.Name, func(b *testing.B) {
			var times []float64
			for b.Loop() {
				p.open(root + "calculators/" + c.Name + ".html")
				p.do(`document.querySelector(".calculator form").dispatchEvent(new Event("input", {bubbles: true}))`)
				p.wait(`document.querySelector(".sum").textContent && !document.querySelector(".calculator").dataset.state`)
				slow(4)
				times = append(times, eval[[]float64](p, keyTimes)...)
				slow(1)
			}
			reportKeys(b, times)
		})
	}
	b.Run("find", func(b *testing.B) {
		var times []float64
		for b.Loop() {
			p.open(root)
			p.tap("#find")
			p.do(`const f = document.querySelector("#find"); f.value = "fuse"; f.dispatchEvent(new Event("input", {bubbles: true}))`)
			p.wait(`document.querySelector(".hits a")`)
			slow(4)
			times = append(times, eval[[]float64](p, `(async () => {
				const field = document.querySelector("#find"), hits = document.querySelector(".hits"), all = [];
				for (const words of ["w", "wi", "wir", "wire", "wire d", "wire dr", "wire drop", "gr", "ground", "ground t", "how thick is the bundle", "camera aim"]) {
					let answered = false;
					const watch = new MutationObserver(() => { answered = true; });
					watch.observe(hits, { childList: true });
					field.value = words;
					const before = performance.now();
					field.dispatchEvent(new Event("input", { bubbles: true }));
					for (let k = 0; k < 50 && !answered; k++) await null;
					hits.getBoundingClientRect();
					all.push(performance.now() - before);
					watch.disconnect();
					await new Promise((done) => setTimeout(done, 5));
				}
				return all;
			})()`)...)
			slow(1)
		}
		reportKeys(b, times)
	})
}

// reportKeys reports the median and the tenth that was quickest, which is what
// a processor gives that nobody else is busy on.
func reportKeys(b *testing.B, times []float64) {
	slices.Sort(times)
	b.ReportMetric(times[len(times)/2], "ms/key")
	b.ReportMetric(times[len(times)/10], "ms/quick-key")
}
