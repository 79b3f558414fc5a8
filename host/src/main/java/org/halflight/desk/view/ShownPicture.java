package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import org.halflight.chart.DataTable;
import org.halflight.chart.FiringRow;
import org.halflight.chart.Picture;
import org.halflight.chart.SpeedMap;
import org.halflight.session.FiringResult;
import org.halflight.speeds.MarkedSpeed;

/**
 * What one of the places for pictures shows.
 *
 * @param picture what is drawn; empty where there is nothing yet
 * @param twin the same as a table
 * @param instead what is said where there is no picture
 * @param speeds the places of a speed map, slow to fast; a click selects one. None in others
 * @param releases the firings of a firing row, in its order; a click on one that was rejected asks
 *     for its reason. None in others
 */
public record ShownPicture(
    Optional<Picture> picture,
    Optional<DataTable> twin,
    String instead,
    List<MarkedSpeed> speeds,
    List<FiringResult> releases) {
  /** Nothing, and no word about it. */
  public static final ShownPicture NOTHING = nothing("");

  public ShownPicture {
    speeds = List.copyOf(speeds);
    releases = List.copyOf(releases);
  }

  static ShownPicture nothing(String instead) {
    return new ShownPicture(Optional.empty(), Optional.empty(), instead, List.of(), List.of());
  }

  static ShownPicture of(Picture picture) {
    return of(picture, List.of(), List.of());
  }

  static ShownPicture map(SpeedMap map, List<MarkedSpeed> speeds) {
    return of(map, speeds, List.of());
  }

  static ShownPicture row(FiringRow row, List<FiringResult> releases) {
    return of(row, List.of(), releases);
  }

  private static ShownPicture of(
      Picture picture, List<MarkedSpeed> speeds, List<FiringResult> releases) {
    return new ShownPicture(
        Optional.of(picture), Optional.of(picture.table()), "", speeds, releases);
  }

  /** The speed at a part of the width, from 0 to 1. */
  public Optional<MarkedSpeed> speedAt(double part) {
    return speeds.isEmpty()
        ? Optional.empty()
        : Optional.of(speeds.get(Math.min(speeds.size() - 1, (int) (part * speeds.size()))));
  }

  /** The release at a place of the row, from 0, if it is there and rejected. */
  public Optional<FiringResult> rejected(int place) {
    return place < 0 || place >= releases.size()
        ? Optional.empty()
        : Optional.of(releases.get(place)).filter(firing -> firing.rejection().isPresent());
  }

  /** The rejected release at a part of the width, from 0 to 1. */
  public Optional<FiringResult> rejectedAt(double part) {
    return rejected((int) (part * releases.size()));
  }
}
