package store

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
)

// applicationID marks a SQLite file as a production file: "GRRW" in ASCII.
const applicationID = 0x47525257

// The steps of the schema, in order, each from the version before. A released
// step is never changed: a file made by it exists somewhere.
//
//go:embed schema/*.sql
var schemaFiles embed.FS

// Version is the version of the file that this program writes.
const Version = 9

// since is the version that brought a table which version 1 had not, or a column that
// its table had not at first, as "table.column".
var since = map[string]int64{
	"reading": 2, "known_point": 3,
	"measured_wall": 4, "measured_point": 4, "diagonal": 4, "step": 4,
	"feature": 5, "way": 5, "floor.board_direction_deg": 5, "floor.board_module_m": 5,
	"mark_progress.worn_by": 6, "mark_progress.worn_on": 6, "mark_progress.lifted_by": 6, "mark_progress.lifted_on": 6,
	"move":          6,
	"method_choice": 7, "production.tape_class": 7, "production.tape_stretch": 7, "production.placing_sigma_m": 7,
	"production.pivot_sigma_m": 7, "production.squaring": 7, "production.by_eye_rad": 7, "production.by_square_rad": 7,
	"production.by_grid_rad": 7, "production.mark_allowed_m": 7,
	"answer": 8,
	"front":  9, "floor.angle_rule": 9, "floor.angle_step_deg": 9, "floor.area_counts": 9, "floor.sight_counts": 9, "element.weight": 9,
}

// migrate takes the file to Version, one transaction a step.
func migrate(ctx context.Context, conn *sql.Conn) error {
	for {
		done, err := migrateOnce(ctx, conn)
		if err != nil || done {
			return err
		}
	}
}

// migrateOnce reads the version inside the transaction, since another window may
// have taken the step while this one waited.
func migrateOnce(ctx context.Context, conn *sql.Conn) (done bool, err error) {
	err = inTransaction(ctx, conn, func() error {
		version, err := pragma(ctx, conn, "user_version")
		if err != nil {
			return err
		}
		if done = version >= Version; done {
			return nil
		}
		return migrateStep(ctx, conn, version+1)
	})
	return done, err
}

func migrateStep(ctx context.Context, conn *sql.Conn, version int64) error {
	step, err := schemaFiles.ReadFile(fmt.Sprintf("schema/%04d.sql", version))
	if err != nil {
		return fmt.Errorf("find schema step %d: %w", version, err)
	}
	end := fmt.Sprintf("PRAGMA user_version = %d; PRAGMA application_id = %d", version, applicationID)
	for _, script := range []string{string(step), end} {
		if _, err := conn.ExecContext(ctx, script); err != nil {
			return fmt.Errorf("take schema step %d: %w", version, err)
		}
	}
	return nil
}

func pragma(ctx context.Context, q querier, name string) (n int64, err error) {
	err = q.QueryRowContext(ctx, "PRAGMA "+name).Scan(&n)
	return n, err
}

// inTransaction runs do between BEGIN IMMEDIATE and COMMIT on one connection.
// The end of a transaction is never cut short by ctx: whether it was saved must
// be known.
func inTransaction(ctx context.Context, conn *sql.Conn, do func() error) error {
	if _, err := conn.ExecContext(ctx, "BEGIN IMMEDIATE"); err != nil {
		return err
	}
	end := context.WithoutCancel(ctx)
	err := do()
	if err == nil {
		_, err = conn.ExecContext(end, "COMMIT")
	}
	if err != nil {
		// SQLite has already rolled back after some errors; then this says so.
		_, _ = conn.ExecContext(end, "ROLLBACK")
	}
	return err
}
