-- Setups that go from one set to another. Both sets' logs tell of it; what is kept here is who asked
-- for it, and in which order it was given, taken or stayed, so that two never have one setup.

create table framewright.move (
  id uuid primary key,
  giver uuid not null references framewright.job,
  taker uuid not null references framewright.job check (taker <> giver),
  setup text not null check (length(setup) between 1 and 1000),
  code text not null check (length(code) between 1 and 1000),
  asked_by text not null check (length(asked_by) <= 1000),
  at timestamptz not null default clock_timestamp(),
  unique (id, giver, taker, setup)
);
create index move_giver on framewright.move (giver);
create index move_taker on framewright.move (taker);

-- What happened to a setup of the set that gives it, numbered 1, 2, 3 over all of its moves.
-- setup: the code by which names tell setups apart. facts: the setup's line; the code that it has
-- now; why it stays; as text, since the columns of a line have an order.
create table framewright.move_step (
  giver uuid not null,
  setup text not null,
  number int not null check (number >= 1),
  move uuid not null,
  taker uuid not null,
  kind text not null check (kind in ('given', 'taken', 'stays')),
  station text not null check (length(station) between 1 and 128),
  at timestamptz not null default clock_timestamp(),
  facts text not null check (octet_length(facts) <= 1048576),
  primary key (giver, setup, number),
  foreign key (move, giver, taker, setup) references framewright.move (id, giver, taker, setup)
);
create index move_step_taker on framewright.move_step (taker);

create trigger kept before update or delete on framewright.move
  for each row execute function framewright.refuse();
create trigger not_emptied before truncate on framewright.move
  for each statement execute function framewright.refuse();
create trigger kept before update or delete on framewright.move_step
  for each row execute function framewright.refuse();
create trigger not_emptied before truncate on framewright.move_step
  for each statement execute function framewright.refuse();

create function framewright.ask_move(
  p_id uuid, p_giver uuid, p_taker uuid, p_setup text, p_code text, p_by text)
returns void language plpgsql security definer set search_path = framewright, pg_temp as $$
begin
  insert into framewright.move (id, giver, taker, setup, code, asked_by)
    select p_id, g.id, t.id, p_setup, p_code, p_by
    from framewright.job g, framewright.job t where g.id = p_giver and t.id = p_taker
    on conflict (id) do nothing;
  perform pg_notify('framewright', p_giver::text);
end
$$;

-- Whoever says first what comes next is right; the other is answered false, and reads again.
create function framewright.step_move(
  p_move uuid, p_number int, p_kind text, p_station text, p_facts text)
returns boolean language plpgsql security definer set search_path = framewright, pg_temp as $$
declare
  m framewright.move;
  last int;
begin
  select * into m from framewright.move where id = p_move;
  if not found then
    raise exception 'no such move' using errcode = '22023';
  end if;
  select coalesce(max(s.number), 0) into last from framewright.move_step s
    where s.giver = m.giver and s.setup = m.setup;
  if p_number = last + 1 then
    insert into framewright.move_step (giver, setup, number, move, taker, kind, station, facts)
      values (m.giver, m.setup, p_number, m.id, m.taker, p_kind, p_station, p_facts)
      on conflict do nothing;
    if found then
      perform pg_notify('framewright', m.giver::text);
      perform pg_notify('framewright', m.taker::text);
      return true;
    end if;
  end if;
  -- An answer that was lost is asked for again.
  return exists (
    select from framewright.move_step s
    where s.giver = m.giver and s.setup = m.setup and s.number = p_number and s.move = m.id
      and s.kind = p_kind and s.station = p_station and s.facts = p_facts);
end
$$;

create or replace function framewright.version() returns int language sql immutable as
$$ select 3 $$;

revoke all on function
  framewright.ask_move(uuid, uuid, uuid, text, text, text),
  framewright.step_move(uuid, int, text, text, text)
  from public;
grant select on framewright.move, framewright.move_step to framewright_station;
grant execute on function
  framewright.ask_move(uuid, uuid, uuid, text, text, text),
  framewright.step_move(uuid, int, text, text, text)
  to framewright_station;
