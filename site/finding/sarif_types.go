package finding

// The part of the SARIF 2.1.0 object model that WriteSARIF uses, with the names
// of its section 3.

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool sarifTool `json:"tool"`
	// OriginalURIBaseIDs say what relative URIs are relative to.
	OriginalURIBaseIDs map[string]sarifArtifact `json:"originalUriBaseIds,omitempty"`
	ColumnKind         string                   `json:"columnKind"`
	Results            []sarifResult            `json:"results"`
}

type sarifTool struct {
	Driver struct {
		Name       string            `json:"name"`
		Version    string            `json:"version,omitempty"`
		Rules      []sarifRule       `json:"rules"`
		Properties map[string]string `json:"properties,omitempty"`
	} `json:"driver"`
}

type sarifRule struct {
	ID                   string    `json:"id"`
	ShortDescription     sarifText `json:"shortDescription"`
	FullDescription      sarifText `json:"fullDescription"`
	Help                 sarifText `json:"help"`
	DefaultConfiguration struct {
		Level string `json:"level"`
	} `json:"defaultConfiguration"`
}

// sarifText serves message, multiformatMessageString and artifactContent, which
// agree in the keys used here.
type sarifText struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

type sarifResult struct {
	RuleID           string          `json:"ruleId,omitempty"`
	RuleIndex        *int            `json:"ruleIndex,omitempty"`
	Level            string          `json:"level"`
	Message          sarifText       `json:"message"`
	Locations        []sarifLocation `json:"locations,omitempty"`
	RelatedLocations []sarifLocation `json:"relatedLocations,omitempty"`
	Fixes            []sarifFix      `json:"fixes,omitempty"`
}

type sarifLocation struct {
	ID               int           `json:"id,omitempty"`
	PhysicalLocation sarifPhysical `json:"physicalLocation"`
	Message          *sarifText    `json:"message,omitempty"`
}

type sarifPhysical struct {
	ArtifactLocation sarifArtifact `json:"artifactLocation"`
	Region           *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct {
	URI       string `json:"uri"`
	URIBaseID string `json:"uriBaseId,omitempty"`
}

type sarifRegion struct {
	StartLine   int  `json:"startLine,omitempty"`
	StartColumn int  `json:"startColumn,omitempty"`
	EndLine     int  `json:"endLine,omitempty"`
	EndColumn   int  `json:"endColumn,omitempty"`
	ByteOffset  *int `json:"byteOffset,omitempty"`
	ByteLength  *int `json:"byteLength,omitempty"`
}

type sarifFix struct {
	Description     *sarifText    `json:"description,omitempty"`
	ArtifactChanges []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	ArtifactLocation sarifArtifact      `json:"artifactLocation"`
	Replacements     []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	DeletedRegion   sarifRegion `json:"deletedRegion"`
	InsertedContent *sarifText  `json:"insertedContent,omitempty"`
}
