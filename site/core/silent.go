package core

import (
	"encoding/binary"
	"strings"
)

// A fifth of the Go runtime's code only speaks: it writes the text of a crash,
// a trace or a profile. The page gives the core nowhere to write to (fd_write
// in core.ts drops the text), so this file makes the bodies of those functions
// a trap. A core that crashes stops in either case; it stops one call sooner.
//
// Which function is which is read from the name section that the WebAssembly
// core specification defines in its appendix, so nothing here rests on the
// linker's layout. A Go version that renames a function makes the core larger,
// not wrong. One that calls such a function in ordinary work is found by the
// parity suite of cmd/browser, which then traps.

// silent are the functions of the runtime, by how their names begin, that only
// write of a crash, a trace or a profile. Letters outside of a to z are
// underscores in the linker's names: (*Frames).Next is __Frames_.Next.
var silent = []string{
	// The text of a crash.
	"dopanic_m", "startpanic_m", "printpanics", "printpanicval", "printanycustomtype", "printquoted", "preprintpanics",
	"printArgs", "printcreatedby", "printFuncName", "printAncestor", "printindented", "showfuncinfo",
	"funcline1", "goroutineheader", "isExportedRuntime", "badPointer", "schedtrace",
	"traceback", "tracebackothers", "tracebackHexdump", "hexdumpWords", "__hexdumper_",
	"printOneCgoTraceback", "printCgoTraceback", "expandCgoFrames", "__Frames_", "makeTraceFrames", "fpunwindExpand",
	"fpTracebackPartialExpand",
	// What the collector says of a damaged heap, and its own examinations.
	"gcDumpObject", "dumpgstatus", "dumpScanStats", "dumpTypesRec", "dumpStacksRec", "printScavTrace",
	"__mspan_.reportZombies", "runCheckmark", "setCheckmark", "startCheckmarks", "endCheckmarks",
	"checkFinalizersAndCleanups", "findGoroutineLeaks", "findMaybeRunnableGoroutines",
	// The tracer of package runtime/trace. What asks whether it is on stays.
	"traceAdvance", "traceReadCPU", "traceStack", "traceSyncBatch", "traceRegisterLabelsAndReasons",
	"traceWriter.", "traceLocker.event", "traceLocker.Go", "traceLocker.Proc", "traceLocker.GC",
	"traceLocker.Heap", "traceLocker.STW", "traceLocker.write", "traceLocker.stack", "traceLocker.string",
	"traceLocker.rtype", "traceLocker.Goroutine", "__trace",
	// The profiles of package runtime/pprof, and the bubbles of testing/synctest.
	"__profBuf_", "stkbucket", "saveblockevent", "saveg", "doRecordGoroutineProfile", "tryRecordGoroutineProfile",
	"__synctestBubble_",
}

// trap is the body of a function without locals whose one instruction traps.
const trap = "\x00\x00\x0b"

// The sections that this file reads, by their ids, and the part of the name
// section that holds the names of functions.
const (
	customSection = 0
	importSection = 2
	codeSection   = 10
	functionNames = 1
)

// importedFunction is the kind of an import that is a function.
const importedFunction = 0

// silence gives the sections of a module without its name section, where the
// functions that only speak trap. Without a name section nothing changes.
func silence(list []section) ([]section, error) {
	names, err := namesOf(list)
	if err != nil {
		return nil, err
	}
	imports, err := importedFunctions(list)
	if err != nil {
		return nil, err
	}
	out := withoutNames(list)
	for i := range out {
		if out[i].id != codeSection || len(names) == 0 {
			continue
		}
		if out[i].body, err = trapped(out[i].body, func(k uint64) bool { return onlySpeaks(names[imports+k]) }); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// onlySpeaks reports whether the function with this name is one of silent.
func onlySpeaks(name string) bool {
	own, ok := strings.CutPrefix(name, runtimeName)
	if !ok {
		return false
	}
	for _, beginning := range silent {
		if strings.HasPrefix(own, beginning) {
			return true
		}
	}
	return false
}

// trapped writes a code section anew, with a trap for the bodies that drop
// picks by their place in the section.
func trapped(body []byte, drop func(uint64) bool) ([]byte, error) {
	r := moduleReader{rest: body}
	n := r.unsigned()
	out := binary.AppendUvarint(nil, n)
	for k := uint64(0); k < n && !r.bad; k++ {
		code := r.bytes(r.unsigned())
		if drop(k) {
			code = []byte(trap)
		}
		out = binary.AppendUvarint(out, uint64(len(code)))
		out = append(out, code...)
	}
	if r.bad || len(r.rest) > 0 {
		return nil, errModule
	}
	return out, nil
}

// isNames reports whether a section is the name section.
func isNames(s section) bool {
	if s.id != customSection {
		return false
	}
	r := moduleReader{rest: s.body}
	return string(r.bytes(r.unsigned())) == "name"
}

// withoutNames is a copy of a module's sections without the name section.
func withoutNames(list []section) []section {
	var out []section
	for _, s := range list {
		if !isNames(s) {
			out = append(out, s)
		}
	}
	return out
}

// namesOf reads the names of a module's functions, by their numbers.
func namesOf(list []section) (map[uint64]string, error) {
	names := make(map[uint64]string)
	for _, s := range list {
		if !isNames(s) {
			continue
		}
		r := moduleReader{rest: s.body}
		r.bytes(r.unsigned())
		for len(r.rest) > 0 && !r.bad {
			part := r.byte()
			inside := moduleReader{rest: r.bytes(r.unsigned())}
			if part != functionNames {
				continue
			}
			for n := inside.unsigned(); n > 0 && !inside.bad; n-- {
				k := inside.unsigned()
				names[k] = string(inside.bytes(inside.unsigned()))
			}
			r.bad = r.bad || inside.bad
		}
		if r.bad {
			return nil, errModule
		}
	}
	return names, nil
}

// importedFunctions counts the functions that a module imports: they have the
// first numbers.
func importedFunctions(list []section) (uint64, error) {
	count := uint64(0)
	for _, s := range list {
		if s.id != importSection {
			continue
		}
		r := moduleReader{rest: s.body}
		for n := r.unsigned(); n > 0 && !r.bad; n-- {
			r.bytes(r.unsigned()) // module
			r.bytes(r.unsigned()) // name
			if r.byte() != importedFunction {
				return 0, errModule // the toolchain imports nothing else
			}
			r.unsigned() // type
			count++
		}
		if r.bad {
			return 0, errModule
		}
	}
	return count, nil
}
