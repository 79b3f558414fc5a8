package org.halflight.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.ReentrantLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import org.halflight.files.NativeLibraries;
import org.halflight.files.PrivateFiles;
import org.halflight.record.RecordTrouble.Reason;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;

/**
 * The two connections to the file: one that writes, under a lock of its own, and one that only
 * reads, so that a long list never holds up a firing. A write is one transaction: all of it is
 * kept, forced to the disk, or nothing.
 *
 * <p>Safe for use by several threads.
 */
final class Database implements AutoCloseable {
  /** SQLite waits so long for a lock of another process, then gives up. */
  private static final int BUSY_TIMEOUT_MILLIS = 5000;

  /** Something done with a connection. */
  interface Work<T> {
    T on(Connection connection) throws SQLException;
  }

  /** Something done to the record that gives nothing. */
  interface Change {
    void on(Connection connection) throws SQLException;
  }

  /** Something done while no connection is open. */
  interface WhileClosed {
    void run();
  }

  private final Path file;
  private final Migrations migrations;
  private final CommitListener listener;
  private final DamagedRows damaged = new DamagedRows();
  private final ReentrantLock writing = new ReentrantLock();
  private final ReentrantLock reading = new ReentrantLock();
  private final ReentrantReadWriteLock besides = new ReentrantReadWriteLock();
  private @Nullable Connection writer;
  private @Nullable Connection reader;

  private Database(Path file, Migrations migrations, CommitListener listener) {
    this.file = file;
    this.migrations = migrations;
    this.listener = listener;
  }

  /**
   * Opens the file, or makes it; looks whether it is whole, ours and not newer; brings it up.
   *
   * @throws RecordTrouble when it cannot be used; it is then as it was
   */
  static Database open(Path file, Migrations migrations, CommitListener listener) {
    Database database = new Database(file, migrations, listener);
    if (!Files.exists(file)) {
      database.make();
    }
    database.connect();
    return database;
  }

  /** What of it is not what was written, as far as anybody came upon it. */
  DamagedRows damaged() {
    return damaged;
  }

  Path file() {
    return file;
  }

  /** Reads, in one view of the record. */
  <T> T read(Work<T> work) {
    reading.lock();
    try {
      Connection connection = needOpen(reader);
      execute(connection, "BEGIN");
      try {
        T result = work.on(connection);
        execute(connection, "COMMIT");
        return result;
      } catch (SQLException | RuntimeException e) {
        rollBack(connection, e);
        throw e;
      }
    } catch (SQLException e) {
      throw trouble(e);
    } finally {
      reading.unlock();
    }
  }

  /** Writes in one transaction. */
  <T> T write(Work<T> work) {
    writing.lock();
    try {
      Connection connection = needOpen(writer);
      execute(connection, "BEGIN IMMEDIATE");
      T result;
      try {
        listener.at(CommitListener.Point.BEGUN);
        result = work.on(connection);
        listener.at(CommitListener.Point.WRITTEN);
        execute(connection, "COMMIT");
      } catch (SQLException | RuntimeException e) {
        rollBack(connection, e);
        throw e;
      }
      listener.at(CommitListener.Point.COMMITTED);
      return result;
    } catch (SQLException e) {
      throw trouble(e);
    } finally {
      writing.unlock();
    }
  }

  /** Changes the record in one transaction. */
  void change(Change change) {
    write(
        connection -> {
          change.on(connection);
          return true;
        });
  }

  /** Works with a connection of its own, while writing goes on; must not change the record. */
  void beside(Change work) {
    besides.readLock().lock();
    try {
      needOpen(writer);
      try (Connection connection = connection()) {
        work.on(connection);
      }
    } catch (SQLException e) {
      throw trouble(e);
    } finally {
      besides.readLock().unlock();
    }
  }

  /** Lets go of the file, does something to it, and opens it again whatever came of that. */
  void whileClosed(WhileClosed work) {
    // In this order: who writes may work beside, but who works beside never writes.
    writing.lock();
    reading.lock();
    besides.writeLock().lock();
    try {
      needOpen(writer);
      disconnect();
      try {
        work.run();
      } finally {
        connect();
      }
    } finally {
      besides.writeLock().unlock();
      reading.unlock();
      writing.unlock();
    }
  }

  /**
   * Looks through the whole file.
   *
   * @return what is wrong with it, empty when nothing is
   */
  List<String> integrityFaults() {
    return read(
        connection ->
            Query.list(connection, "PRAGMA integrity_check", row -> row.getString(1)).stream()
                .filter(line -> !line.equals("ok"))
                .toList());
  }

  @Override
  public void close() {
    writing.lock();
    reading.lock();
    try {
      disconnect();
    } finally {
      reading.unlock();
      writing.unlock();
    }
  }

  /** Undoes a transaction; SQLite may have done so itself, after a full disk for one. */
  static void rollBack(Connection connection, Exception cause) {
    try {
      execute(connection, "ROLLBACK");
    } catch (SQLException undone) {
      cause.addSuppressed(undone);
    }
  }

  /**
   * What a look at a file came to.
   *
   * @param version of its form, 0 where it has none
   * @param indexesAgree whether its indexes agree with its tables, as far as was looked
   */
  record Examined(int version, boolean indexesAgree) {}

  /** Refuses a file that is damaged, of something else, or of a later form. Changes nothing. */
  static Examined examine(Connection connection, Path file, int newest) throws SQLException {
    int version = Migrations.version(connection);
    int application = Query.one(connection, "PRAGMA application_id", row -> row.getInt(1));
    boolean empty =
        Query.list(connection, "SELECT name FROM sqlite_schema", row -> row.getString(1)).isEmpty();
    if (!empty && application != Migrations.APPLICATION_ID) {
      throw RecordTrouble.of(Reason.NOT_OURS, "record.notOurs", file);
    }
    if (version > newest) {
      throw RecordTrouble.of(Reason.NEWER, "record.newer", file, version, newest);
    }
    boolean sealed = version >= Migrations.SEALED_FROM;
    List<String> faults = faults(connection, version);
    for (String fault : faults) {
      if (!sealed || IntegrityFault.of(fault) == IntegrityFault.PAGES) {
        throw RecordTrouble.of(Reason.DAMAGED, "record.damaged", file, fault.replace('\n', ' '));
      }
    }
    if (sealed && !RowCrc.isFormWhole(connection)) {
      throw RecordTrouble.of(
          Reason.DAMAGED, "record.damaged", file, Words.say("record.formDamaged"));
    }
    return new Examined(version, sealed && indexesAgree(faults));
  }

  private static boolean indexesAgree(List<String> faults) {
    return faults.stream().noneMatch(fault -> IntegrityFault.of(fault) == IntegrityFault.INDEX);
  }

  /** Before rows bore check sums, the quick look left out what only indexes tell. */
  private static List<String> faults(Connection connection, int version) throws SQLException {
    return Query.list(
            connection,
            version < Migrations.SEALED_FROM ? "PRAGMA quick_check(1)" : "PRAGMA integrity_check",
            row -> row.getString(1))
        .stream()
        .filter(line -> !line.equals("ok"))
        .toList();
  }

  /** A connection with the settings of this record; the file is made when it is not there. */
  static Connection connection(Path file) throws SQLException {
    // Before the driver unpacks its machine code, which it does once.
    System.setProperty("org.sqlite.tmpdir", NativeLibraries.folder().toString());
    SQLiteConfig config = new SQLiteConfig();
    config.enforceForeignKeys(true);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setBusyTimeout(BUSY_TIMEOUT_MILLIS);
    String path = file.toAbsolutePath().toString();
    // The driver takes all from a question mark on for settings.
    return config.createConnection(
        "jdbc:sqlite:" + (path.contains("?") ? file.toAbsolutePath().toUri().toString() : path));
  }

  private Connection connection() throws SQLException {
    return connection(file);
  }

  private void connect() {
    boolean done = false;
    try {
      if (Files.exists(file) && !Files.isWritable(file)) {
        throw RecordTrouble.of(
            Reason.READ_ONLY, "record.readOnly", file, Words.say("file.reason.permission"));
      }
      needNotEmpty(file);
      damaged.forget();
      writer = connection();
      damaged.watch(writer);
      Examined examined = examine(writer, file, migrations.newest());
      if (examined.version() == 0) {
        throw RecordTrouble.of(Reason.NOT_OURS, "record.notOurs", file);
      }
      // Only now: this writes to the file.
      execute(writer, "PRAGMA journal_mode = WAL");
      execute(writer, "BEGIN IMMEDIATE");
      execute(writer, "ROLLBACK");
      migrations.bringUp(writer, file);
      lookThrough(writer, examined);
      reader = connection();
      damaged.watch(reader);
      execute(reader, "PRAGMA query_only = ON");
      done = true;
    } catch (SQLException e) {
      throw trouble(e);
    } finally {
      if (!done) {
        disconnect();
      }
    }
  }

  /**
   * Makes a new record: beside its place first, so that there is never an empty or half a one under
   * its name.
   */
  private void make() {
    Path part = file.resolveSibling(file.getFileName() + ".new");
    try {
      PrivateFiles.makeFolderOf(file);
      Files.deleteIfExists(part);
      Files.deleteIfExists(part.resolveSibling(part.getFileName() + "-journal"));
      PrivateFiles.make(part);
      try (Connection connection = connection(part)) {
        migrations.bringUp(connection, part);
      }
      Backup.force(part);
      Backup.move(part, file);
    } catch (SQLException e) {
      Backup.delete(part);
      throw trouble(e);
    } catch (IOException e) {
      Backup.delete(part);
      throw SqlTrouble.of(file, e);
    }
  }

  /** An empty file is no record that was begun: those are made beside their place. */
  private static void needNotEmpty(Path file) {
    try {
      if (Files.isRegularFile(file) && Files.size(file) == 0) {
        throw RecordTrouble.of(Reason.NOT_OURS, "record.empty", file);
      }
    } catch (IOException e) {
      throw SqlTrouble.of(file, e);
    }
  }

  /**
   * Looks at the check sums of all small tables, and makes indexes anew that do not agree with
   * their tables: the rows bear check sums, the indexes hold nothing of their own. The large tables
   * are looked at when they are read.
   */
  private void lookThrough(Connection connection, Examined examined) throws SQLException {
    int version = Migrations.version(connection);
    if (version < Migrations.SEALED_FROM) {
      return;
    }
    if (!examined.indexesAgree() && !indexesAgree(faults(connection, version))) {
      execute(connection, "REINDEX");
      damaged.report(Words.say("record.reindexed", file));
    }
    for (Map.Entry<String, List<String>> table : RowCrc.KEYS.entrySet()) {
      if (!RowCrc.LARGE.contains(table.getKey())) {
        Query.list(connection, "SELECT * FROM " + table.getKey(), row -> 0);
      }
    }
  }

  private void disconnect() {
    @Nullable Connection[] open = {reader, writer};
    reader = null;
    writer = null;
    for (Connection each : open) {
      try {
        if (each != null) {
          DamagedRows.leave(each);
          each.close();
        }
      } catch (SQLException alreadyGone) {
        // Whatever was committed is on the disk; there is nothing left to lose by this connection.
      }
    }
  }

  private Connection needOpen(@Nullable Connection connection) {
    if (connection == null) {
      throw RecordTrouble.of(Reason.CLOSED, "record.closed", file);
    }
    return connection;
  }

  private RuntimeException trouble(SQLException e) {
    if (e instanceof Word.Unknown) {
      return RecordTrouble.of(
              Reason.NEWER, "record.laterWord", file, String.valueOf(e.getMessage()))
          .because(e);
    }
    return e instanceof EdgeBlob.Unreadable
        ? RecordTrouble.of(Reason.DAMAGED, "record.badEdges", file, String.valueOf(e.getMessage()))
            .because(e)
        : SqlTrouble.of(file, e);
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
