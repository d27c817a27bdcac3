package output

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"io"
	"regexp"
	"strconv"
)

var fontFile = regexp.MustCompile(`/FontFile2 (\d+) 0 R`)

// finishFonts makes each embedded font depend on nothing but its letters: its
// date of change becomes its date of making. And each gets a tag of its own
// for its name, as ISO 32000-1, 9.6.4 asks, where the renderer tags all alike:
// programs that join documents take fonts of one name for one font.
func (f *pdfFile) finishFonts() error {
	for _, i := range f.order {
		m := fontFile.FindSubmatch(f.objects[i])
		if m == nil {
			continue
		}
		n, err := strconv.Atoi(string(m[1]))
		if err != nil || n >= len(f.objects) {
			return errPDF
		}
		font, err := inflate(f.body(n))
		if err != nil {
			return err
		}
		if err := undate(font); err != nil {
			return err
		}
		f.replace(n, deflate(font))
		f.objects[i] = bytes.ReplaceAll(f.objects[i], []byte("/SUBSET+"), []byte("/"+tag(font)+"+"))
	}
	return nil
}

// tag is six capital letters made from the font's contents.
func tag(font []byte) string {
	sum := sha256.Sum256(font)
	letters := sum[:6]
	for i, b := range letters {
		letters[i] = 'A' + b%26
	}
	return string(letters)
}

// undate sets a TrueType font's date of change to its date of making, and its
// checksums right (OpenType specification, "head" and "Table directory").
func undate(font []byte) error {
	be := binary.BigEndian
	if len(font) < 12 || len(font) < 12+16*int(be.Uint16(font[4:])) {
		return errPDF
	}
	for i := range int(be.Uint16(font[4:])) {
		record := font[12+16*i:][:16]
		at, length := uint64(be.Uint32(record[8:])), uint64(be.Uint32(record[12:]))
		if string(record[:4]) != "head" || length < 54 || at+length+2 > uint64(len(font)) {
			continue
		}
		head := font[at:][:length]
		copy(head[28:36], head[20:28])
		clear(head[8:12]) // the checksum of all is taken with itself at 0
		be.PutUint32(record[4:], checksum(head))
		be.PutUint32(head[8:], 0xB1B0AFBA-checksum(font))
		return nil
	}
	return errPDF
}

// checksum is the sum of the words of four bytes, the last filled with zeros.
func checksum(b []byte) (sum uint32) {
	for ; len(b) >= 4; b = b[4:] {
		sum += binary.BigEndian.Uint32(b)
	}
	var last [4]byte
	copy(last[:], b)
	return sum + binary.BigEndian.Uint32(last[:])
}

// inflate is what a compressed stream object holds.
func inflate(object []byte) ([]byte, error) {
	_, data, ok := bytes.Cut(object, []byte(">>stream\n"))
	if !ok {
		return nil, errPDF
	}
	r, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		return nil, errPDF
	}
	b, err := io.ReadAll(r)
	if err != nil {
		return nil, errPDF
	}
	return b, nil
}

// deflate is the body of a compressed stream object for a font, whose length
// before compression ISO 32000-1, 9.9 asks for.
func deflate(font []byte) []byte {
	var data bytes.Buffer
	w := zlib.NewWriter(&data)
	// Writing to memory does not fail.
	_, _ = w.Write(font)
	_ = w.Close()
	return fmt.Appendf(nil, "<</Filter/FlateDecode/Length %d/Length1 %d>>stream\n%s\nendstream", data.Len(), len(font), data.Bytes())
}
