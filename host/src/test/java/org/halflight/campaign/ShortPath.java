package org.halflight.campaign;

import java.io.IOException;
import java.net.URI;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;

/** A path on a {@link ShortDisk}: the real one, by way of that disk. */
record ShortPath(ShortDisk disk, Path real) implements Path {
  private Path here(Path path) {
    return path == null ? null : new ShortPath(disk, path);
  }

  private static Path real(Path path) {
    return path instanceof ShortPath here ? here.real() : path;
  }

  @Override
  public FileSystem getFileSystem() {
    return disk.system();
  }

  @Override
  public boolean isAbsolute() {
    return real.isAbsolute();
  }

  @Override
  public Path getRoot() {
    return here(real.getRoot());
  }

  @Override
  public Path getFileName() {
    return here(real.getFileName());
  }

  @Override
  public Path getParent() {
    return here(real.getParent());
  }

  @Override
  public int getNameCount() {
    return real.getNameCount();
  }

  @Override
  public Path getName(int index) {
    return here(real.getName(index));
  }

  @Override
  public Path subpath(int from, int to) {
    return here(real.subpath(from, to));
  }

  @Override
  public boolean startsWith(Path other) {
    return real.startsWith(real(other));
  }

  @Override
  public boolean endsWith(Path other) {
    return real.endsWith(real(other));
  }

  @Override
  public Path normalize() {
    return here(real.normalize());
  }

  @Override
  public Path resolve(Path other) {
    return here(real.resolve(real(other)));
  }

  @Override
  public Path relativize(Path other) {
    return here(real.relativize(real(other)));
  }

  @Override
  public URI toUri() {
    return real.toUri();
  }

  @Override
  public Path toAbsolutePath() {
    return here(real.toAbsolutePath());
  }

  @Override
  public Path toRealPath(LinkOption... options) throws IOException {
    return here(real.toRealPath(options));
  }

  @Override
  public WatchKey register(
      WatchService watcher, WatchEvent.Kind<?>[] events, WatchEvent.Modifier... modifiers)
      throws IOException {
    return real.register(watcher, events, modifiers);
  }

  @Override
  public int compareTo(Path other) {
    return real.compareTo(real(other));
  }

  @Override
  public String toString() {
    return real.toString();
  }
}
