package org.halflight.desk.view;

/** Everything that a key of the window does. */
public enum UserAction {
  /**
   * What a test of the light asked for is done; else the firings of the open question stay as
   * shown.
   */
  ACCEPT,
  /** The film advance was tried after a press, and it turns. */
  WIND_TURNS,
  /** The film advance was tried after a press, and it is locked. */
  WIND_LOCKED,
  /** The step that is asked for is skipped. */
  SKIP_READING,
  /** The test that goes on is left. */
  STOP_READING,
  /** Full light is measured again. */
  FULL_LIGHT,
  /** The light is aimed, with the meter. */
  AIM_LIGHT,
  /** The light is set, step by step. */
  SET_LIGHT,
  /** It is looked whether the screen reaches the sensor. */
  CHECK_SCREEN,
  /** The last firing is not counted. */
  REJECT,
  /** A firing that is not counted gets another reason. */
  REASON,
  /** The last thing that the person did about speeds and firings is undone. */
  UNDO,
  /** What was undone last is done again. */
  REDO,
  /** The next speed is shown. */
  NEXT,
  /** The speed before is shown. */
  PREVIOUS,
  /** The firings of the open question belong to the other speed. */
  MOVE,
  /** The shutter hung open and was closed by hand. */
  CLOSED_BY_HAND,
  /** Strokes of cocking are learnt, or learning ends. */
  LEARN_COCKING,
  /** The lens cap is on, or off again. */
  LENS_CAP,
  /** The firing just made was the first after a rest, or was not. */
  CONDITION_REST,
  /** Warmed, from the next firing on. */
  CONDITION_WARMED,
  /** The next attitude, from the next firing on. */
  CONDITION_ATTITUDE,
  /** The dial of the firing just made was turned from the other side. */
  CONDITION_DIAL,
  /** The firing just made was a quick tap. */
  CONDITION_QUICK_TAP,
  /** The firing just made was a long press. */
  CONDITION_LONG_PRESS,
  /** Wide open, from the next firing on. */
  CONDITION_WIDE_OPEN,
  /** Stopped down, from the next firing on. */
  CONDITION_STOPPED_DOWN,
  /** The firing just made was as the next ones are said to be. */
  CONDITION_LAST_TOO,
  /** The caps of the conditions are shown in place of the other keys, or those again. */
  CONDITIONS,
  /** In a run in stages: the cover was put on, or taken off. */
  SWITCH_COVER,
  /** In a run in stages: the cells are none, the rear one, the front one, both, in turn. */
  SWITCH_CELLS,
  /** In a run in stages: on the bench, loose in the camera, the ring tight, in turn. */
  SWITCH_PLACE,
  /** An adjustment is marked. */
  MARK,
  /** What is turned in the open step was turned tighter, or clockwise, by an eighth of a turn. */
  TURN_TIGHTER,
  /** The same looser, or the other way. */
  TURN_LOOSER,
  /** The next step of adjusting curtains that the camera has. */
  STEP_NEXT,
  /** Cleaning, and how everything was found. */
  STEP_CLEAN,
  /** The first curtain. */
  STEP_FIRST_TENSION,
  /** The second curtain. */
  STEP_SECOND_TENSION,
  /** The slit. */
  STEP_SLIT,
  /** Both curtains and the slit once more. */
  STEP_AGAIN,
  /** The brakes. */
  STEP_BRAKE,
  /** The flash contact. */
  STEP_CONTACT,
  /** The slow speeds. */
  STEP_ESCAPEMENT,
  /** The day after. */
  STEP_NEXT_DAY,
  /** Two speeds are adjusted at once, or one at a time again. */
  TWO,
  /** The slower neighbour of the speed that is looked at. */
  LOOK_SLOWER,
  /** The faster neighbour of the speed that is looked at. */
  LOOK_FASTER,
  /** The speed that is looked at is the one to fire. */
  CHOOSE,
  /** Pictures become tables, or tables pictures. */
  TABLES,
  /** The column alone fills the bench, or the whole bench is shown again. */
  FAR_VIEW,
  /** The light curve of the last firing takes the large place, or gives it back. */
  CURVE,
  /** Sounds are switched on or off. */
  SOUNDS,
  /** Light or dark. */
  THEME,
  /** Cocks and fires the model camera; on the practice rig only. */
  FIRE,
  /** Cocks the model camera so that light comes through; on the practice rig only. */
  COCK,
  /** To the bench. */
  TO_BENCH,
  /** To the light. */
  TO_LIGHT,
  /** To the camera and its visit. */
  TO_CAMERA,
  /** To the set-up of a run. */
  TO_RUN,
  /** To the details of the speed that is looked at. */
  DETAILS,
  /** To what was tried beside the marked speeds. */
  TO_TRIED,
  /** To the rig itself: profile, rig check, calibration. */
  TO_RIG,
  /** To the first light of a rig that was just built. */
  TO_FIRST_LIGHT,
  /** To all cameras and their history. */
  TO_CAMERAS,
  /** What can go wrong on the practice rig. */
  PRACTICE,
  /** From the practice rig to the rig, or back. */
  CHANGE_BENCH,
  /** The menu of everything that can be done. */
  MENU,
  /** The page of the guide about this place. */
  HELP,
  /** Which program this is, and what it runs on. */
  ABOUT,
  /** Ends the session and closes the window. */
  QUIT,
  /** Says what the keys do. */
  KEYS
}
