package publish

import (
	"bytes"
	"encoding/binary"
)

// orientation reads how a camera held a JPEG from its EXIF block: 1 (upright)
// where it does not say.
func orientation(data []byte) int {
	tiff := exifBlock(data)
	if len(tiff) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if string(tiff[:2]) == "II" {
		order = binary.LittleEndian
	}
	at := int(order.Uint32(tiff[4:]))
	if at < 8 || at+2 > len(tiff) {
		return 1
	}
	const orientationTag, entrySize = 0x0112, 12
	entries := int(order.Uint16(tiff[at:]))
	for i := range entries {
		e := at + 2 + i*entrySize
		if e+entrySize > len(tiff) {
			return 1
		}
		if order.Uint16(tiff[e:]) == orientationTag {
			return int(order.Uint16(tiff[e+8:]))
		}
	}
	return 1
}

// exifBlock finds the TIFF structure in a JPEG's APP1 segment, nil where
// there is none.
func exifBlock(data []byte) []byte {
	at := 2 // behind the start-of-image mark
	for at+4 <= len(data) && data[at] == 0xFF {
		kind, size := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if kind == 0xDA || size < 2 || at+2+size > len(data) {
			return nil
		}
		segment := data[at+4 : at+2+size]
		if kind == 0xE1 && bytes.HasPrefix(segment, []byte("Exif\x00\x00")) {
			return segment[6:]
		}
		at += 2 + size
	}
	return nil
}
