-- The store of many sets. Events are appended and read, by whoever has the role framewright_station;
-- nothing here changes or removes one.

do $$
begin
  if not exists (select from pg_roles where rolname = 'framewright_station') then
    create role framewright_station nologin;
  end if;
end
$$;

create table framewright.job (
  id uuid primary key,
  name text not null check (length(name) between 1 and 1000),
  convention text not null check (octet_length(convention) <= 1048576),
  added timestamptz not null default clock_timestamp()
);

-- The last number of each log.
create table framewright.head (
  job uuid not null references framewright.job,
  station text not null check (station ~ '^[A-Za-z0-9][A-Za-z0-9-]{0,127}$'),
  number bigint not null check (number >= 0),
  at timestamptz not null default clock_timestamp(),
  primary key (job, station)
);

-- line: the sealed line as its station wrote it, byte for byte.
create table framewright.event (
  job uuid not null,
  station text not null,
  number bigint not null check (number >= 1),
  millis bigint not null,
  line bytea not null check (octet_length(line) between 2 and 67108864),
  primary key (job, station, number),
  foreign key (job, station) references framewright.head
);
-- Lines are short and few of them are packed well; not to try saves time at each append.
alter table framewright.event alter column line set storage external;

-- How each set stood last, as one of its computers told it; of how many events it knew.
create table framewright.standing (
  job uuid primary key references framewright.job,
  events bigint not null,
  station text not null,
  at timestamptz not null default clock_timestamp(),
  facts jsonb not null check (pg_column_size(facts) <= 131072)
);

create function framewright.refuse() returns trigger language plpgsql as $$
begin
  raise exception 'events are appended and never changed or removed' using errcode = '0A000';
end
$$;

create trigger kept before update or delete on framewright.event
  for each row execute function framewright.refuse();
create trigger not_emptied before truncate on framewright.event
  for each statement execute function framewright.refuse();
create trigger kept before update or delete on framewright.job
  for each row execute function framewright.refuse();
create trigger not_emptied before truncate on framewright.job
  for each statement execute function framewright.refuse();
create trigger kept before delete on framewright.head
  for each row execute function framewright.refuse();
create trigger not_emptied before truncate on framewright.head
  for each statement execute function framewright.refuse();

create function framewright.grow() returns trigger language plpgsql as $$
begin
  if new.job <> old.job or new.station <> old.station or new.number <= old.number then
    raise exception 'a log only grows' using errcode = '0A000';
  end if;
  return new;
end
$$;

create trigger grows before update on framewright.head
  for each row execute function framewright.grow();

create function framewright.version() returns int language sql immutable as $$ select 1 $$;

create function framewright.add_job(p_id uuid, p_name text, p_convention text) returns void
language sql security definer set search_path = framewright, pg_temp as $$
  insert into framewright.job (id, name, convention) values (p_id, p_name, p_convention)
  on conflict (id) do nothing;
$$;

-- Appends the lines p_first, p_first + 1, ... of one log. The answer is by the number alone: kept,
-- had, gap or clash, with the number of the last event that is kept then. A commit that does not
-- wait for the disk would confirm what a power cut takes back, so it is refused.
create function framewright.append(
  p_job uuid, p_station text, p_first bigint, p_millis bigint[], p_lines bytea[],
  out answer text, out last bigint)
language plpgsql security definer set search_path = framewright, pg_temp as $$
declare
  n int := coalesce(array_length(p_lines, 1), 0);
begin
  if current_setting('synchronous_commit') = 'off' then
    raise exception 'synchronous_commit is off' using errcode = '55000';
  end if;
  if n = 0 or n <> coalesce(array_length(p_millis, 1), 0) or p_first < 1 then
    raise exception 'no lines, or not as many times' using errcode = '22023';
  end if;
  select h.number into last from framewright.head h
    where h.job = p_job and h.station = p_station for update;
  if not found then
    insert into framewright.head (job, station, number) values (p_job, p_station, 0)
      on conflict do nothing;
    select h.number into last from framewright.head h
      where h.job = p_job and h.station = p_station for update;
  end if;
  if p_first > last + 1 then
    answer := 'gap';
    return;
  end if;
  if p_first <= last and exists (
      select from unnest(p_lines) with ordinality as sent (line, i)
      join framewright.event e
        on e.job = p_job and e.station = p_station and e.number = p_first + sent.i - 1
      where p_first + sent.i - 1 <= last and e.line <> sent.line) then
    answer := 'clash';
    return;
  end if;
  if p_first + n - 1 <= last then
    answer := 'had';
    return;
  end if;
  insert into framewright.event (job, station, number, millis, line)
    select p_job, p_station, p_first + sent.i - 1, sent.millis, sent.line
    from unnest(p_millis, p_lines) with ordinality as sent (millis, line, i)
    where p_first + sent.i - 1 > last;
  last := p_first + n - 1;
  update framewright.head h set number = last, at = clock_timestamp()
    where h.job = p_job and h.station = p_station;
  -- A hint, on which nobody relies: whoever reads asks by the number.
  perform pg_notify('framewright', p_job::text);
  answer := 'kept';
end
$$;

-- One row a set. Who knows more events replaces what was told by who knew fewer.
create function framewright.tell(p_job uuid, p_events bigint, p_station text, p_facts jsonb)
returns boolean language plpgsql security definer set search_path = framewright, pg_temp as $$
begin
  insert into framewright.standing as s (job, events, station, facts)
    values (p_job, p_events, p_station, p_facts)
    on conflict (job) do update
      set events = excluded.events, station = excluded.station, facts = excluded.facts,
          at = clock_timestamp()
      where s.events <= excluded.events;
  return found;
end
$$;

revoke all on all functions in schema framewright from public;
grant usage on schema framewright to framewright_station;
grant select on framewright.job, framewright.head, framewright.event, framewright.standing
  to framewright_station;
grant execute on function
  framewright.version(),
  framewright.add_job(uuid, text, text),
  framewright.append(uuid, text, bigint, bigint[], bytea[]),
  framewright.tell(uuid, bigint, text, jsonb)
  to framewright_station;
