package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
)

// original returns how an imported file is written, byte for byte as it came.
func (e *export) original(ctx context.Context, p *production, name string) (func(io.Writer) error, error) {
	if len(p.P.Drawings) == 0 {
		return nil, errors.New("no drawing has been imported into this production")
	}
	names := make([]string, len(p.P.Drawings))
	for i, d := range p.P.Drawings {
		names[i] = d.Name
	}
	if name == "" {
		return nil, fmt.Errorf("which drawing? There are: %s", strings.Join(names, "; "))
	}
	i, err := named("drawing", name, names)
	if err != nil {
		return nil, err
	}
	content, err := p.Drawing(ctx, p.P.Drawings[i].ID)
	if err != nil {
		return nil, err
	}
	return func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	}, nil
}
