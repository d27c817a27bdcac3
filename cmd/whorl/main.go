// Command whorl turns a written crochet pattern into stitch charts, and checks
// it on the way. This package is the command only: arguments, files in and
// out, exit status.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"github.com/spf13/cobra"

	"whorl/patterns/fault"
)

// The exit status.
const (
	statusDone   = 0
	statusFaults = 1 // the pattern has faults
	statusMisuse = 2 // misused, or a file could not be read or written
)

// gcPercent lets the memory grow to five times what is in use before what is not is
// looked for: a run is short and holds little, and would spend a third of its time on
// that otherwise.
const gcPercent = 400

func main() {
	debug.SetGCPercent(gcPercent)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run runs the command and gives its exit status.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	root := command()
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errs)
	err := root.Execute()
	var faults fault.List
	switch {
	case err == nil:
		return statusDone
	case errors.Is(err, errFaults), errors.Is(err, errUnclean):
		return statusFaults
	case errors.As(err, &faults):
		fmt.Fprintln(errs, faults.Error())
		return statusFaults
	}
	fmt.Fprintln(errs, "whorl:", err)
	return statusMisuse
}

// errFaults says that the pattern has faults, which have been printed.
var errFaults = errors.New("the pattern has faults")

func command() *cobra.Command {
	root := &cobra.Command{
		Use:   "whorl",
		Short: "Stitch charts and checks from a written crochet pattern",
		Long: "whorl reads a crochet pattern in its written words, works every stitch of every\n" +
			"size, checks the counts, and draws stitch charts from it.\n\n" +
			"Begin with: whorl new > my-hat.yaml",
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.AddCommand(drawCommand(), withAudit(checkCommand()), newCommand(), wordsCommand(), sizeCommand(), spaceCommand(), symbolsCommand())
	return root
}
