package org.halflight.record;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.locks.ReentrantLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import org.halflight.record.RecordTrouble.Reason;
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

  /** Something done while no connection is open. */
  interface WhileClosed {
    void run();
  }

  private final Path file;
  private final Migrations migrations;
  private final CommitListener listener;
  private final ReentrantLock writing = new ReentrantLock();
  private final ReentrantLock reading = new ReentrantLock();
  private final ReentrantReadWriteLock besides = new ReentrantReadWriteLock();
  private Connection writer;
  private Connection reader;

  private Database(Path file, Migrations migrations, CommitListener listener) {
    this.file = file;
    this.migrations = migrations;
    this.listener = Objects.requireNonNull(listener);
  }

  /**
   * Opens the file, or makes it; looks whether it is whole, ours and not newer; brings it up.
   *
   * @throws RecordTrouble when it cannot be used; it is then as it was
   */
  static Database open(Path file, Migrations migrations, CommitListener listener) {
    Database database = new Database(file, migrations, listener);
    database.connect();
    return database;
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

  /** Works with a connection of its own, while writing goes on; must not change the record. */
  <T> T beside(Work<T> work) {
    besides.readLock().lock();
    try {
      needOpen(writer);
      try (Connection connection = connection()) {
        return work.on(connection);
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

  /** Refuses a file that is damaged, of something else, or of a later form. Changes nothing. */
  static int examine(Connection connection, Path file, int newest) throws SQLException {
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
    String check = Query.one(connection, "PRAGMA quick_check(1)", row -> row.getString(1));
    if (!check.equals("ok")) {
      throw RecordTrouble.of(Reason.DAMAGED, "record.damaged", file, check.replace('\n', ' '));
    }
    return version;
  }

  /** A connection with the settings of this record; the file is made when it is not there. */
  static Connection connection(Path file) throws SQLException {
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
        throw RecordTrouble.of(Reason.READ_ONLY, "record.readOnly", file, "no permission");
      }
      writer = connection();
      examine(writer, file, migrations.newest());
      // Only now: this writes to the file.
      execute(writer, "PRAGMA journal_mode = WAL");
      execute(writer, "BEGIN IMMEDIATE");
      execute(writer, "ROLLBACK");
      migrations.bringUp(writer, file);
      reader = connection();
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

  private void disconnect() {
    Connection[] open = {reader, writer};
    reader = null;
    writer = null;
    for (Connection each : open) {
      try {
        if (each != null) {
          each.close();
        }
      } catch (SQLException alreadyGone) {
        // Whatever was committed is on the disk; there is nothing left to lose by this connection.
      }
    }
  }

  private Connection needOpen(Connection connection) {
    if (connection == null) {
      throw RecordTrouble.of(Reason.CLOSED, "record.closed", file);
    }
    return connection;
  }

  private RuntimeException trouble(SQLException e) {
    if (e instanceof Word.Unknown) {
      return RecordTrouble.of(Reason.NEWER, "record.laterWord", file, e.getMessage()).because(e);
    }
    return e instanceof EdgeBlob.Unreadable
        ? RecordTrouble.of(Reason.DAMAGED, "record.badEdges", file, e.getMessage()).because(e)
        : SqlTrouble.of(file, e);
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
