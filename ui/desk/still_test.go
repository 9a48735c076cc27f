package desk

import (
	"context"
	"errors"
	"slices"
	"testing"
)

func TestAStillDeskWorksWhenItIsSettled(t *testing.T) {
	d := New(nil)
	d.Still()
	var did []string
	note := func(what string) { did = append(did, what) }
	d.Run("count", func(context.Context) error { note("work"); return errors.New("spoilt") }, func(err error) {
		note(err.Error())
		d.Quietly(func(context.Context) { note("more work") }, func() { note("done") })
	})
	if len(did) > 0 {
		t.Errorf("did %v before it was settled", did)
	}
	d.Settle()
	if want := []string{"work", "spoilt", "more work", "done"}; !slices.Equal(did, want) {
		t.Errorf("did %v, want %v", did, want)
	}
}

func TestAStillDeskLeavesWhatWasCalledOff(t *testing.T) {
	d := New(nil)
	d.Still()
	callOff := d.Quietly(func(context.Context) {}, func() { t.Error("what was called off came back") })
	callOff()
	d.Settle()
}
