// Package browsertest tries the shipped book as its readers meet it: in a
// browser, at a phone's size, printed, with the server gone, from a folder.
// It holds tests alone.
package browsertest
