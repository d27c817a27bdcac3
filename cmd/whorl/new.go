package main

import (
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"whorl/patterns"
)

func newCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "new [FILE]",
		Short: "Write a commented starting file",
		Long: "Write a small pattern with notes on every part of it, to be filled with your own:\n" +
			"to FILE, which must not exist yet, or to standard output.",
		Args: cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 || args[0] == "-" {
				_, err := c.OutOrStdout().Write(patterns.Starter())
				return err
			}
			if _, err := os.Lstat(args[0]); err == nil {
				return fmt.Errorf("%s exists already, and is left as it is", args[0])
			}
			if err := writeFile(args[0], func(w io.Writer) error {
				_, err := w.Write(patterns.Starter())
				return err
			}); err != nil {
				return err
			}
			fmt.Fprintln(c.OutOrStdout(), args[0])
			return nil
		},
	}
}
