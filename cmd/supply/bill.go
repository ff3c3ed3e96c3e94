package main

import (
	"fmt"
	"io"
	"os/exec"
	"strings"

	"github.com/CycloneDX/cyclonedx-go"
)

// bill writes a bill of materials of a release (CycloneDX 1.6, JSON): the same
// bytes each time, so it names no time and no random number.
func bill(root, version string, out io.Writer) error {
	all, err := parts(root)
	if err != nil {
		return err
	}
	toolchain, err := exec.Command("go", "env", "GOVERSION").Output()
	if err != nil {
		return err
	}
	var components []cyclonedx.Component
	for _, p := range all {
		c := cyclonedx.Component{Type: cyclonedx.ComponentTypeLibrary, Name: p.Name, Version: p.Version, BOMRef: p.Name}
		if p.module {
			c.PackageURL = "pkg:golang/" + p.Name + "@" + p.Version
			c.BOMRef = c.PackageURL
		} else if p.Version == "" {
			c.Version = strings.TrimPrefix(strings.TrimSpace(string(toolchain)), "go")
			if strings.Contains(p.Name, "typefaces") {
				c.Type, c.Version = cyclonedx.ComponentTypeData, ""
			}
		}
		ids := p.ids()
		if len(ids) == 0 {
			return fmt.Errorf("the license of %s is of a kind that nobody has looked at; read it, and add its sign to the list", p.Name)
		}
		var list cyclonedx.Licenses
		for _, id := range ids {
			list = append(list, cyclonedx.LicenseChoice{License: &cyclonedx.License{ID: id}})
		}
		c.Licenses = &list
		components = append(components, c)
	}
	b := cyclonedx.NewBOM()
	b.Metadata = &cyclonedx.Metadata{Component: &cyclonedx.Component{
		Type: cyclonedx.ComponentTypeApplication, Name: "baybook", Version: version, BOMRef: "baybook",
	}}
	b.Components = &components
	return cyclonedx.NewBOMEncoder(out, cyclonedx.BOMFileFormatJSON).SetPretty(true).EncodeVersion(b, cyclonedx.SpecVersion1_6)
}
