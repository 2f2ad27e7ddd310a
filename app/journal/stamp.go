package journal

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"time"
)

// stamp tells whether a file is still what it was.
type stamp struct {
	size    int64
	changed time.Time
	sum     string // of its contents; "" when the file is not there
}

func stampOf(path string) stamp { return stamp{}.again(path) }

// again is the stamp of the file as it is now. The file is read only when its
// time or size are new, for most saves elsewhere change both.
func (s stamp) again(path string) stamp {
	info, err := os.Stat(path)
	if err != nil {
		return stamp{}
	}
	if s.sum != "" && s.size == info.Size() && s.changed.Equal(info.ModTime()) {
		return s
	}
	src, err := os.ReadFile(path)
	if err != nil {
		return stamp{}
	}
	sum := sha256.Sum256(src)
	return stamp{info.Size(), info.ModTime(), hex.EncodeToString(sum[:])}
}
