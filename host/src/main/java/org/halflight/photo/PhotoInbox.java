package org.halflight.photo;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import org.halflight.files.Reasons;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * A folder in which pictures arrive. Whoever owns it looks at it again and again; a file is given
 * out once its length and its time were the same at two looks, and again only when they change. The
 * folder is only read.
 */
public final class PhotoInbox {
  private static final String SETTING = "photo-inbox";

  /** Endings of pictures; others are left alone without a word. */
  private static final Set<String> ENDINGS =
      Set.of("jpg", "jpeg", "jpe", "png", "heic", "heif", "avif", "webp", "tif", "tiff", "gif");

  /**
   * A file as it was seen.
   *
   * @param file in the folder
   * @param bytes its length
   * @param changedAt its time
   */
  public record Arrived(Path file, long bytes, Instant changedAt) {}

  /**
   * What a look came to.
   *
   * @param arrived whole files that are new since the last look, the oldest first
   * @param trouble why the folder cannot be looked at, once for each reason
   */
  public record Look(List<Arrived> arrived, Optional<String> trouble) {
    public Look {
      arrived = List.copyOf(arrived);
    }
  }

  private record Seen(Arrived last, boolean isGivenOut) {}

  private final Path folder;
  private final Map<Path, Seen> seen = new HashMap<>();
  private String said = "";

  public PhotoInbox(Path folder) {
    this.folder = folder;
  }

  /** The folder that the settings name; empty for none. */
  public static String chosen(Properties settings) {
    return settings.getProperty(SETTING, "");
  }

  /** Keeps the folder in the settings; empty for none. */
  public static void choose(Properties settings, String folder) {
    settings.setProperty(SETTING, folder);
  }

  /**
   * A folder as it was typed, by its whole path; empty for none.
   *
   * @throws Trouble when there is no such folder
   */
  public static String checked(String typed) {
    try {
      Path whole = Path.of(typed).toAbsolutePath().normalize();
      if (typed.isBlank() || Files.isDirectory(whole)) {
        return typed.isBlank() ? "" : whole.toString();
      }
    } catch (InvalidPathException noName) {
      // Said below.
    }
    throw new Trouble(Words.say("photo.inbox.noFolder", typed));
  }

  /** Whether a file bears the name of a picture. */
  static boolean isNamedAsPicture(Path file) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    return !name.startsWith(".") && ENDINGS.contains(name.substring(name.lastIndexOf('.') + 1));
  }

  public Path folder() {
    return folder;
  }

  /** Looks at the folder. */
  public Look look() {
    List<Arrived> whole = new ArrayList<>();
    Map<Path, Seen> now = new HashMap<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        see(file)
            .ifPresent(
                is -> {
                  Optional<Seen> before =
                      Optional.ofNullable(seen.get(file)).filter(b -> b.last().equals(is));
                  boolean given = before.map(Seen::isGivenOut).orElse(false);
                  if (before.isPresent() && !given) {
                    whole.add(is);
                  }
                  now.put(file, new Seen(is, before.isPresent()));
                });
      }
    } catch (IOException | DirectoryIteratorException | SecurityException gone) {
      return new Look(List.of(), trouble(gone));
    }
    seen.clear();
    seen.putAll(now);
    said = "";
    whole.sort(Comparator.comparing(Arrived::changedAt).thenComparing(Arrived::file));
    return new Look(whole, Optional.empty());
  }

  /** Gives out a file again at the next look: it could not be taken. */
  public void again(Path file) {
    seen.computeIfPresent(file, (path, before) -> new Seen(before.last(), false));
  }

  private static Optional<Arrived> see(Path file) {
    if (!isNamedAsPicture(file)) {
      return Optional.empty();
    }
    try {
      BasicFileAttributes is = Files.readAttributes(file, BasicFileAttributes.class);
      return is.isRegularFile() && is.size() > 0
          ? Optional.of(new Arrived(file, is.size(), is.lastModifiedTime().toInstant()))
          : Optional.empty();
    } catch (IOException | SecurityException meanwhile) {
      return Optional.empty();
    }
  }

  private Optional<String> trouble(Exception gone) {
    Throwable cause =
        gone instanceof DirectoryIteratorException of
            ? Objects.requireNonNull(of.getCause())
            : gone;
    String sentence =
        cause instanceof NoSuchFileException || cause instanceof NotDirectoryException
            ? Words.say("photo.inbox.gone", folder)
            : Words.say("photo.inbox.unreadable", folder, Reasons.of(cause));
    boolean isNew = !sentence.equals(said);
    said = sentence;
    return isNew ? Optional.of(sentence) : Optional.empty();
  }
}
