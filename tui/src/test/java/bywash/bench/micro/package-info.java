/** The paths that every reading takes, each by itself. */
@org.jspecify.annotations.NullMarked
package bywash.bench.micro;
