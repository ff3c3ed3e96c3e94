package publish

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// A calculator's value also says what only a page built beforehand and the
// prompt show: its question, help, sources and limits. The core is compiled
// from a copy of the source that leaves those words out, laid over the true
// one, so that the calculator stays one value in one place.

// unsaid are the fields that a result in the browser does not need.
var unsaid = []string{"Title", "Question", "Doc", "Help", "Sources", "Limits"}

// overlay writes copies of the calculators' files into a folder, and the list
// that makes the toolchain read them instead. It gives the name of the list.
func overlay(moduleRoot, folder string) (string, error) {
	root, err := filepath.Abs(moduleRoot)
	if err != nil {
		return "", err
	}
	replace := make(map[string]string)
	err = filepath.WalkDir(filepath.Join(root, "calculators"), func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		source, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		short := withoutWords(source)
		if len(short) == len(source) {
			return nil
		}
		copied := filepath.Join(folder, strconv.Itoa(len(replace))+".go")
		replace[name] = copied
		return os.WriteFile(copied, short, 0o600)
	})
	if err != nil {
		return "", err
	}
	list, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	name := filepath.Join(folder, "overlay.json")
	return name, os.WriteFile(name, list, 0o600)
}

// withoutWords empties the unsaid fields of the calculators in a Go file, and
// of inputs and outputs that several share. A file that cannot be read stays
// as it is, for the toolchain to complain of.
func withoutWords(source []byte) []byte {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, "", source, parser.SkipObjectResolution)
	if err != nil {
		return source
	}
	var out []byte
	at := 0
	for _, value := range saidIn(file) {
		from, to := files.Position(value.Pos()).Offset, files.Position(value.End()).Offset
		empty := `""`
		if _, list := value.(*ast.CompositeLit); list {
			empty = "nil"
		}
		out = append(append(out, source[at:from]...), empty...)
		at = to
	}
	return append(out, source[at:]...)
}

// saidIn finds the values of the unsaid fields, in the order of the file.
func saidIn(file *ast.File) []ast.Expr {
	var values []ast.Expr
	inside := func(node ast.Node) bool {
		if _, code := node.(*ast.FuncLit); code {
			return false
		}
		field, ok := node.(*ast.KeyValueExpr)
		if !ok {
			return true
		}
		if key, ok := field.Key.(*ast.Ident); ok && slices.Contains(unsaid, key.Name) && isWritten(field.Value) {
			values = append(values, field.Value)
			return false
		}
		return true
	}
	ast.Inspect(file, func(node ast.Node) bool {
		if literal, ok := node.(*ast.CompositeLit); ok && isOfKit(literal.Type) {
			ast.Inspect(literal, inside)
			return false
		}
		return true
	})
	return values
}

// isWritten reports a value that is written out there and then.
func isWritten(value ast.Expr) bool {
	switch value.(type) {
	case *ast.BasicLit, *ast.BinaryExpr, *ast.CompositeLit:
		return true
	}
	return false
}

// isOfKit reports the types whose literals have unsaid fields: a calculator,
// and lists of inputs, outputs and rules. The help of a circuit's keys, which
// stand alone, is said in the browser.
func isOfKit(of ast.Expr) bool {
	names := []string{"Calculator"}
	if list, ok := of.(*ast.ArrayType); ok {
		of, names = list.Elt, []string{"Input", "Output", "Rule"}
	}
	switch of := of.(type) {
	case *ast.SelectorExpr:
		return slices.Contains(names, of.Sel.Name)
	case *ast.Ident:
		return slices.Contains(names, of.Name)
	}
	return false
}
