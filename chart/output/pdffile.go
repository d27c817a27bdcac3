package output

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// pdfFile is a rendered document taken apart: what comes before its objects,
// and the objects by their numbers, "n 0 obj" to "endobj".
type pdfFile struct {
	header  []byte
	objects [][]byte // objects[0] is none
	order   []int    // the numbers in the order of the file
}

var errPDF = errors.New("the PDF renderer's document is not built as it should be: it cannot be finished")

// takeApart finds a document's objects by its cross-reference table.
func takeApart(b []byte) (*pdfFile, error) {
	offsets, table, err := crossReferences(b)
	if err != nil {
		return nil, err
	}
	f := &pdfFile{objects: make([][]byte, len(offsets))}
	for i := 1; i < len(offsets); i++ {
		f.order = append(f.order, i)
	}
	slices.SortFunc(f.order, func(i, j int) int { return offsets[i] - offsets[j] })
	f.header = b[:offsets[f.order[0]]]
	for k, i := range f.order {
		end := table
		if k+1 < len(f.order) {
			end = offsets[f.order[k+1]]
		}
		f.objects[i] = b[offsets[i]:end]
		if !bytes.HasPrefix(f.objects[i], []byte(strconv.Itoa(i)+" 0 obj\n")) || !bytes.HasSuffix(f.objects[i], []byte("\nendobj\n")) {
			return nil, errPDF
		}
	}
	return f, nil
}

// crossReferences reads where the objects of a document begin, by their
// numbers from 1, and where its cross-reference table does (ISO 32000-1, 7.5.4).
func crossReferences(b []byte) (offsets []int, table int, err error) {
	_, end, ok := bytes.Cut(b[max(0, len(b)-64):], []byte("startxref\n"))
	if !ok {
		return nil, 0, errPDF
	}
	table, err = strconv.Atoi(strings.TrimSuffix(string(end), "\n%%EOF\n"))
	if err != nil || table < 0 || table > len(b) {
		return nil, 0, errPDF
	}
	rows := strings.Split(string(b[table:]), "\n")
	size, ok := strings.CutPrefix(rows[min(1, len(rows)-1)], "0 ")
	n, err := strconv.Atoi(size)
	if !ok || err != nil || rows[0] != "xref" || n <= properties || len(rows) < n+2 {
		return nil, 0, errPDF
	}
	offsets = make([]int, n)
	for i := 1; i < n; i++ {
		at, _, _ := strings.Cut(rows[2+i], " ")
		offsets[i], err = strconv.Atoi(at)
		if err != nil || offsets[i] < 0 || offsets[i] > table {
			return nil, 0, errPDF
		}
	}
	return offsets, table, nil
}

// body is an object without its first and last lines.
func (f *pdfFile) body(number int) []byte {
	_, b, _ := bytes.Cut(f.objects[number], []byte("\n"))
	return bytes.TrimSuffix(b, []byte("\nendobj\n"))
}

func (f *pdfFile) replace(number int, body []byte) {
	f.objects[number] = fmt.Appendf(nil, "%d 0 obj\n%s\nendobj\n", number, body)
}

// add adds an object behind the others.
func (f *pdfFile) add(body []byte) {
	f.order = append(f.order, len(f.objects))
	f.objects = append(f.objects, nil)
	f.replace(len(f.objects)-1, body)
}

// whole puts the document together again, with an identifier made from its
// contents (ISO 32000-1, 14.4).
func (f *pdfFile) whole() []byte {
	out := bytes.NewBuffer(bytes.Clone(f.header))
	offsets := make([]int, len(f.objects))
	for _, i := range f.order {
		offsets[i] = out.Len()
		out.Write(f.objects[i])
	}
	sum := sha256.Sum256(out.Bytes())
	table := out.Len()
	fmt.Fprintf(out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets))
	for _, at := range offsets[1:] {
		fmt.Fprintf(out, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(out, "trailer\n<</Root %d 0 R/Info %d 0 R/Size %d/ID[<%x><%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		catalogue, properties, len(offsets), sum[:16], sum[:16], table)
	return out.Bytes()
}
