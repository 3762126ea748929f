-- Search across jobs. All of it comes of the events and of the names of frames; it can be made anew.

-- How far a job's rows go, and what is said of the whole job: a line each, "client: Kvo".
create table framewright.searched (
  job uuid primary key references framewright.job,
  events bigint not null,
  about text not null check (length(about) <= 8000)
);

-- words: what it is found by, with weights: A code and GTIN, B title, C people, D the job's.
create table framewright.search_setup (
  job uuid not null references framewright.searched,
  setup text not null check (length(setup) between 1 and 1000),
  title text not null check (length(title) <= 1000),
  gtins text not null check (length(gtins) <= 1000),
  people text not null check (length(people) <= 4000),
  state text not null check (length(state) <= 30),
  day date,
  words tsvector not null check (octet_length(words::text) <= 65536),
  primary key (job, setup)
);
create index search_setup_words on framewright.search_setup using gin (words);

-- Frames are told by each computer that has them: those of one setup that are numbered one after the
-- other are one row. Blank setup: they belong to none. Their names without the number, as a key.
create table framewright.search_frames (
  job uuid not null references framewright.job,
  station text not null check (length(station) between 1 and 128),
  setup text not null check (length(setup) <= 1000),
  stem text collate "C" not null check (length(stem) <= 300),
  numbers int8range not null,
  primary key (job, station, setup, stem, numbers)
);
create index search_frames_numbers on framewright.search_frames using gist (numbers);

-- Every word of all setups once, in which slips and parts are looked up.
create table framewright.search_word (
  word text collate "C" primary key check (length(word) between 1 and 64)
);

-- What is told of a job replaces what was told by who knew fewer events.
-- p_codes: the codes of all of its setups; null where they are those of before.
create function framewright.tell_search(
  p_job uuid, p_events bigint, p_about text, p_setups jsonb, p_codes text[])
returns boolean language plpgsql security definer set search_path = framewright, pg_temp as $$
begin
  insert into framewright.searched as s (job, events, about) values (p_job, p_events, p_about)
    on conflict (job) do update set events = excluded.events, about = excluded.about
      where s.events <= excluded.events;
  if not found then
    return false;
  end if;
  -- In order, so that two who add the same words do not wait for each other.
  insert into framewright.search_word (word)
    select word from (
      select distinct unnest(tsvector_to_array(t.words)) collate "C" as word
      from jsonb_to_recordset(p_setups) as t (words tsvector)) as told
    where not exists (select from framewright.search_word known where known.word = told.word)
    order by word
    on conflict do nothing;
  if p_codes is not null then
    delete from framewright.search_setup where job = p_job and setup <> all (p_codes);
  end if;
  insert into framewright.search_setup as s
      (job, setup, title, gtins, people, state, day, words)
    select p_job, t.setup, t.title, t.gtins, t.people, t.state, t.day, t.words
    from jsonb_to_recordset(p_setups) as t (
      setup text, title text, gtins text, people text, state text, day date, words tsvector)
    on conflict (job, setup) do update
      set title = excluded.title, gtins = excluded.gtins, people = excluded.people,
          state = excluded.state, day = excluded.day, words = excluded.words
      where (s.title, s.gtins, s.people, s.state, s.day, s.words) is distinct from
        (excluded.title, excluded.gtins, excluded.people, excluded.state, excluded.day,
         excluded.words);
  return true;
end
$$;

-- Replaces what a computer told of its frames of a job.
create function framewright.tell_frames(p_job uuid, p_station text, p_frames jsonb)
returns void language plpgsql security definer set search_path = framewright, pg_temp as $$
begin
  delete from framewright.search_frames f
    where f.job = p_job and f.station = p_station and not exists (
      select from jsonb_to_recordset(p_frames) as t (setup text, stem text, first bigint, last bigint)
      where t.setup = f.setup and t.stem = f.stem
        and int8range(t.first, t.last, '[]') = f.numbers);
  insert into framewright.search_frames (job, station, setup, stem, numbers)
    select p_job, p_station, t.setup, t.stem, int8range(t.first, t.last, '[]')
    from jsonb_to_recordset(p_frames) as t (setup text, stem text, first bigint, last bigint)
    on conflict do nothing;
end
$$;

-- The extension may be there already, in whatever schema.
create extension if not exists pg_trgm;

do $do$
declare
  place text := (
    select n.nspname from pg_extension e join pg_namespace n on n.oid = e.extnamespace
    where e.extname = 'pg_trgm');
begin
  execute format(
    'create index search_word_parts on framewright.search_word using gin (word %I.gin_trgm_ops)',
    place);
  -- Words that have p_word in them (how = 2), and words like it (how = 3), the likest first.
  execute format($f$
    create function framewright.words_like(p_word text, p_slips boolean)
    returns table (word text, how int) language plpgsql stable
    set search_path = framewright, %I, pg_temp set pg_trgm.similarity_threshold = 0.25 as $$
    begin
      return query
        select w.word, 2 from framewright.search_word w
        where w.word like '%%' || p_word || '%%' order by length(w.word), w.word limit 100;
      if p_slips then
        return query
          select w.word, 3 from framewright.search_word w
          where w.word %% p_word order by similarity(w.word, p_word) desc, w.word limit 12;
      end if;
    end
    $$
    $f$, place);
end
$do$;

create or replace function framewright.version() returns int language sql immutable as
$$ select 2 $$;

revoke all on function
  framewright.tell_search(uuid, bigint, text, jsonb, text[]),
  framewright.tell_frames(uuid, text, jsonb),
  framewright.words_like(text, boolean)
  from public;
grant select on framewright.searched, framewright.search_setup, framewright.search_frames,
  framewright.search_word to framewright_station;
grant execute on function
  framewright.tell_search(uuid, bigint, text, jsonb, text[]),
  framewright.tell_frames(uuid, text, jsonb),
  framewright.words_like(text, boolean)
  to framewright_station;
