package org.halflight.campaign;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.StandardOpenOption;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A disk that takes so many bytes more and then no more, in the middle of a write if need be, until
 * there is room again. Any code that writes by way of a {@link Path} can be put on it.
 */
final class ShortDisk extends FileSystemProvider {
  private final FileSystem under;
  private final FileSystem system = new Underneath();
  private long room;

  /**
   * @param under a real file system
   * @param room bytes that it takes
   */
  ShortDisk(FileSystem under, long room) {
    this.under = under;
    this.room = room;
  }

  /** A path on this disk. */
  Path path(Path real) {
    return new ShortPath(this, real);
  }

  /** There is room for so many bytes more. */
  void hasRoom(long bytes) {
    room = bytes;
  }

  boolean isFull() {
    return room == 0;
  }

  /** Reserves as many of these bytes as there is room for. */
  int reserve(int bytes) throws IOException {
    if (bytes > 0 && room == 0) {
      throw new IOException("No space left on device");
    }
    int taken = (int) Math.min(bytes, room);
    room -= taken;
    return taken;
  }

  FileSystem system() {
    return system;
  }

  private static Path real(Path path) {
    return path instanceof ShortPath here ? here.real() : path;
  }

  private static FileSystemProvider providerOf(Path path) {
    return real(path).getFileSystem().provider();
  }

  @Override
  public FileChannel newFileChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    return new ShortChannel(this, FileChannel.open(real(path), options, attributes));
  }

  @Override
  public SeekableByteChannel newByteChannel(
      Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
      throws IOException {
    return newFileChannel(path, options, attributes);
  }

  @Override
  public OutputStream newOutputStream(Path path, OpenOption... options) throws IOException {
    Set<OpenOption> all = new java.util.HashSet<>(List.of(options));
    if (options.length == 0) {
      all.addAll(List.of(StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING));
    }
    all.add(StandardOpenOption.WRITE);
    return Channels.newOutputStream(newFileChannel(path, all));
  }

  @Override
  public DirectoryStream<Path> newDirectoryStream(
      Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
    List<Path> found = new ArrayList<>();
    try (DirectoryStream<Path> files =
        providerOf(folder).newDirectoryStream(real(folder), p -> true)) {
      for (Path file : files) {
        Path here = path(file);
        if (filter.accept(here)) {
          found.add(here);
        }
      }
    }
    return new DirectoryStream<>() {
      @Override
      public java.util.Iterator<Path> iterator() {
        return found.iterator();
      }

      @Override
      public void close() {}
    };
  }

  @Override
  public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
    providerOf(folder).createDirectory(real(folder), attributes);
  }

  @Override
  public void delete(Path path) throws IOException {
    providerOf(path).delete(real(path));
  }

  @Override
  public void copy(Path from, Path to, CopyOption... options) throws IOException {
    providerOf(from).copy(real(from), real(to), options);
  }

  @Override
  public void move(Path from, Path to, CopyOption... options) throws IOException {
    providerOf(from).move(real(from), real(to), options);
  }

  @Override
  public boolean isSameFile(Path one, Path two) throws IOException {
    return providerOf(one).isSameFile(real(one), real(two));
  }

  @Override
  public boolean isHidden(Path path) throws IOException {
    return providerOf(path).isHidden(real(path));
  }

  @Override
  public FileStore getFileStore(Path path) throws IOException {
    return providerOf(path).getFileStore(real(path));
  }

  @Override
  public void checkAccess(Path path, AccessMode... modes) throws IOException {
    providerOf(path).checkAccess(real(path), modes);
  }

  @Override
  public <V extends FileAttributeView> V getFileAttributeView(
      Path path, Class<V> type, LinkOption... options) {
    return providerOf(path).getFileAttributeView(real(path), type, options);
  }

  @Override
  public <A extends BasicFileAttributes> A readAttributes(
      Path path, Class<A> type, LinkOption... options) throws IOException {
    return providerOf(path).readAttributes(real(path), type, options);
  }

  @Override
  public Map<String, Object> readAttributes(Path path, String names, LinkOption... options)
      throws IOException {
    return providerOf(path).readAttributes(real(path), names, options);
  }

  @Override
  public void setAttribute(Path path, String name, Object value, LinkOption... options)
      throws IOException {
    providerOf(path).setAttribute(real(path), name, value, options);
  }

  @Override
  public String getScheme() {
    return "short";
  }

  @Override
  public FileSystem newFileSystem(URI uri, Map<String, ?> environment) {
    throw new UnsupportedOperationException();
  }

  @Override
  public FileSystem getFileSystem(URI uri) {
    return system;
  }

  @Override
  public Path getPath(URI uri) {
    throw new UnsupportedOperationException();
  }

  /** The real system under another provider. */
  private final class Underneath extends FileSystem {
    @Override
    public FileSystemProvider provider() {
      return ShortDisk.this;
    }

    @Override
    public void close() {
      throw new UnsupportedOperationException();
    }

    @Override
    public boolean isOpen() {
      return true;
    }

    @Override
    public boolean isReadOnly() {
      return false;
    }

    @Override
    public String getSeparator() {
      return under.getSeparator();
    }

    @Override
    public Iterable<Path> getRootDirectories() {
      List<Path> roots = new ArrayList<>();
      under.getRootDirectories().forEach(root -> roots.add(path(root)));
      return roots;
    }

    @Override
    public Iterable<FileStore> getFileStores() {
      return under.getFileStores();
    }

    @Override
    public Set<String> supportedFileAttributeViews() {
      return under.supportedFileAttributeViews();
    }

    @Override
    public Path getPath(String first, String... more) {
      return path(under.getPath(first, more));
    }

    @Override
    public PathMatcher getPathMatcher(String pattern) {
      PathMatcher matcher = under.getPathMatcher(pattern);
      return path -> matcher.matches(real(path));
    }

    @Override
    public UserPrincipalLookupService getUserPrincipalLookupService() {
      return under.getUserPrincipalLookupService();
    }

    @Override
    public WatchService newWatchService() throws IOException {
      return under.newWatchService();
    }
  }
}
