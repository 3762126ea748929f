-- Numbers of the day and the week across jobs. All of it comes of the events and the frames; it can
-- be made anew. The day 'infinity' has what belongs to no day.

-- How far a job's rows go.
create table framewright.numbered (
  job uuid primary key references framewright.job,
  events bigint not null
);

-- What became of a job's setups on each of its days.
-- planned: null where the list does not say for which day.
-- on_set, waits: in seconds, one for each setup of which it is known, so that medians of any days
-- and jobs together are right.
create table framewright.numbers_setups (
  job uuid not null references framewright.numbered,
  day date not null,
  planned int check (planned >= 0),
  done int not null check (done >= 0),
  signed_off int not null check (signed_off >= 0),
  pickups int not null check (pickups >= 0),
  dropped int not null check (dropped >= 0),
  on_set int[] not null check (cardinality(on_set) <= done),
  waits int[] not null check (cardinality(waits) <= signed_off),
  primary key (job, day)
);
create index numbers_setups_day on framewright.numbers_setups (day);

-- Frames are counted by each computer that has them.
-- selects: null where no frame of the job was ever chosen. Times are those of the place of the shoot.
create table framewright.numbers_frames (
  job uuid not null references framewright.job,
  station text not null check (length(station) between 1 and 128),
  day date not null,
  frames int not null check (frames >= 0),
  selects int check (selects between 0 and frames),
  first_taken timestamp,
  last_taken timestamp,
  primary key (job, station, day)
);
create index numbers_frames_day on framewright.numbers_frames (day);

-- What is told of a job replaces what was told by who knew fewer events.
create function framewright.tell_numbers(p_job uuid, p_events bigint, p_days jsonb)
returns boolean language plpgsql security definer set search_path = framewright, pg_temp as $$
begin
  insert into framewright.numbered as s (job, events) values (p_job, p_events)
    on conflict (job) do update set events = excluded.events where s.events <= excluded.events;
  if not found then
    return false;
  end if;
  delete from framewright.numbers_setups n
    where n.job = p_job and not exists (
      select from jsonb_to_recordset(p_days) as t (day date) where t.day = n.day);
  insert into framewright.numbers_setups as n
      (job, day, planned, done, signed_off, pickups, dropped, on_set, waits)
    select p_job, t.day, t.planned, t.done, t.signed_off, t.pickups, t.dropped, t.on_set, t.waits
    from jsonb_to_recordset(p_days) as t (
      day date, planned int, done int, signed_off int, pickups int, dropped int,
      on_set int[], waits int[])
    on conflict (job, day) do update
      set planned = excluded.planned, done = excluded.done, signed_off = excluded.signed_off,
          pickups = excluded.pickups, dropped = excluded.dropped, on_set = excluded.on_set,
          waits = excluded.waits
      where (n.planned, n.done, n.signed_off, n.pickups, n.dropped, n.on_set, n.waits)
        is distinct from (excluded.planned, excluded.done, excluded.signed_off, excluded.pickups,
          excluded.dropped, excluded.on_set, excluded.waits);
  return true;
end
$$;

-- Replaces what a computer told of its frames of a job.
create function framewright.tell_frame_numbers(p_job uuid, p_station text, p_days jsonb)
returns void language plpgsql security definer set search_path = framewright, pg_temp as $$
begin
  delete from framewright.numbers_frames f
    where f.job = p_job and f.station = p_station and not exists (
      select from jsonb_to_recordset(p_days) as t (day date) where t.day = f.day);
  insert into framewright.numbers_frames as f
      (job, station, day, frames, selects, first_taken, last_taken)
    select p_job, p_station, t.day, t.frames, t.selects, t.first_taken, t.last_taken
    from jsonb_to_recordset(p_days) as t (
      day date, frames int, selects int, first_taken timestamp, last_taken timestamp)
    on conflict (job, station, day) do update
      set frames = excluded.frames, selects = excluded.selects,
          first_taken = excluded.first_taken, last_taken = excluded.last_taken
      where (f.frames, f.selects, f.first_taken, f.last_taken)
        is distinct from (excluded.frames, excluded.selects, excluded.first_taken,
          excluded.last_taken);
end
$$;

create or replace function framewright.version() returns int language sql immutable as
$$ select 4 $$;

revoke all on function
  framewright.tell_numbers(uuid, bigint, jsonb),
  framewright.tell_frame_numbers(uuid, text, jsonb)
  from public;
grant select on framewright.numbered, framewright.numbers_setups, framewright.numbers_frames
  to framewright_station;
grant execute on function
  framewright.tell_numbers(uuid, bigint, jsonb),
  framewright.tell_frame_numbers(uuid, text, jsonb)
  to framewright_station;
