-- From schema version 8 to 9: a run may name the position of its sync lever, by which its flash contact is judged.
-- Never edited once a release has written it; docs/record.md tells what each column means.

CREATE TRIGGER sync_lever_is_known BEFORE INSERT ON run_condition
WHEN NEW.name = 'sync-lever' AND NEW.words NOT IN ('X', 'M')
BEGIN
  SELECT RAISE (ABORT, 'a sync lever is at X or at M');
END;
