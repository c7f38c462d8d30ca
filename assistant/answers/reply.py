"""One way through: a letter in, checked answers out."""

from __future__ import annotations

import time
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

from assistant.answers.answer import Answer, Reply
from assistant.answers.check import Checked, Statement, Statements, check
from assistant.answers.compose import compose
from assistant.answers.compose.case import Audience, Case
from assistant.answers.compose.explain import explain, notes_silent
from assistant.answers.compose.silent import nothing_left
from assistant.answers.draft import Draft
from assistant.answers.questions import Asked, Decide, IfSilent, asked_of
from assistant.answers.support import looked_up, supported, told_styles
from assistant.fitment.decide import decide
from assistant.fitment.decision import Decision, Outcome
from assistant.fitment.narrow import is_original
from assistant.interview.asked import with_best_question
from assistant.interview.next_question import State
from assistant.reading.facts import Facts
from assistant.reading.letters import Letter
from assistant.reading.not_known import not_known
from assistant.reading.read import read
from assistant.reading.text import Text
from assistant.records.sections import in_sentences
from assistant.search.looks import styles_alike
from assistant.search.searching import Found, Search
from assistant.shop import Shop

IN_A_MAIL = 3  # questions that may stand together in a letter


@dataclass(frozen=True)
class Past:
    """What was asked before, and how asking goes.

    `asked` are questions that are not put again, `unknown` those of them that could not be
    answered. At `most` so many are put at once. `talking`: the customer answers at once, and
    what a note says is not quoted again where it stands in `said`, the answers so far.
    """

    unknown: frozenset[str] = frozenset()
    asked: tuple[str, ...] = ()
    most: int = 1
    talking: bool = False
    said: tuple[str, ...] = ()


def reply(
    shop: Shop,
    letter: Letter,
    *,
    audience: Audience,
    today: date | None = None,
    search: Search | None = None,
    most_questions: int | None = None,
) -> Reply:
    """Reads a letter, decides, composes, and shows only what the check lets through.

    Of a mail up to three things are asked at once, as a reply takes a day, else one;
    `most_questions` says otherwise. Ages count from `today`; where none is given, from the
    mail's own date, else from now. Without `search` the notes are not searched, and questions
    of how and why go to a person.
    """
    began = time.perf_counter()
    facts = read(letter, shop.names, today or letter.sent or date.today())
    if search is not None:
        facts = facts.plus(styles_alike(search, letter.text, facts))
    past = Past(unknown=_left_open(letter.text, facts), most=most_questions or most_in(letter))
    return answered(
        shop, letter.text, facts, audience=audience, search=search, began=began, past=past
    )


def _left_open(text: Text, facts: Facts) -> frozenset[str]:
    """'No number, no name': what the customer says he does not know is not asked.

    Of several toilets it is not told whose number cannot be read.
    """
    if len(facts.toilets) > 1:
        return frozenset()
    return frozenset(q for clause in not_known(text.raw) for q in clause.questions)


def most_in(letter: Letter) -> int:
    """How many questions may stand together in the answer to a letter."""
    return IN_A_MAIL if letter.is_mail else 1


def answered(
    shop: Shop,
    text: Text,
    facts: Facts,
    *,
    audience: Audience,
    search: Search | None = None,
    began: float,
    past: Past | None = None,
) -> Reply:
    """The answers to facts already read from a message, after what was asked before."""
    past = past or Past()
    case = Case(
        tables=shop.tables,
        notes=shop.notes,
        audience=audience,
        currency=shop.settings.currency,
        customers_see=shop.settings.customers_see,
        policies=shop.settings.policies,
        put_before=past.unknown | {*past.asked},
    )
    answers: list[Answer] = []
    cautions: set[str] = set()  # each is said once in a reply
    for toilet, draft in _drafts(shop, case, facts, past, text, search):
        original = is_original(facts.of_toilet(toilet))
        draft.unsay(cautions)
        if past.talking:  # with a part at last, the cautions are said once more
            said = past.said[-1:] if draft.outcome is Outcome.PART else past.said
            draft.unsay(q for q in draft.quoted if any(q in one for one in said))
        answer = _checked(shop, case, draft, text.raw, original, toilet)
        cautions.update(c for c in answer.cautions if c in answer.text)
        if answer.text not in (other.text for other in answers):  # two questions, one answer
            answers.append(answer)
    took = (time.perf_counter() - began) * 1000
    return Reply(tuple(answers), facts, audience, took)


def _drafts(
    shop: Shop, case: Case, facts: Facts, past: Past, text: Text, search: Search | None
) -> Iterable[tuple[int, Draft]]:
    for toilet in facts.toilets:
        mine = facts.of_toilet(toilet)
        silent = True
        decision = with_best_question(
            shop.counter,
            mine,
            decide(shop.counter, mine),
            State(mine, past.unknown, past.asked),
            most=past.most,
            talking=past.talking,
        )
        for wanted in asked_of(case, mine, text, alone=len(facts.toilets) == 1):
            if isinstance(wanted, IfSilent) and not silent:
                continue
            draft = _draft(case, mine, decision, wanted, search)
            if draft is not None:
                silent = False
                yield toilet, draft


def _draft(
    case: Case, facts: Facts, decision: Decision, wanted: Asked, search: Search | None
) -> Draft | None:
    """The draft of one answer; `None` for a question that may stay open."""
    if isinstance(wanted, IfSilent):
        wanted = wanted.instead
    if isinstance(wanted, Draft):
        return wanted
    if isinstance(wanted, Decide):
        draft = compose(case, decision)
        return draft if search is None else supported(case, draft, search)
    question = wanted.question
    found: list[Found] = []
    if search is not None:
        found = looked_up(case, facts, question.text, told_styles(case, decision, facts), search)
    if found:
        return explain(case, found)
    return notes_silent(case) if question.plain else None


def _checked(
    shop: Shop, case: Case, draft: Draft, message: str, original: bool, toilet: int
) -> Answer:
    """The draft as far as the check lets it stand; 'no match' where its main statement falls."""
    seen = _check(shop, case, draft, message, original)
    if not _stands(draft, seen):
        fallen, draft = seen, nothing_left(case)
        seen = _check(shop, case, draft, message, original)
        seen = Checked(
            seen.text, (*fallen.checks, *seen.checks), (*fallen.taken_out, *seen.taken_out)
        )
    fallen_words = named_in(" ".join(seen.taken_out))
    said = named_in(seen.text)
    shown = [part for part in draft.parts if part.part_no in said]
    return Answer(
        outcome=draft.outcome,
        text=seen.text,
        parts=tuple(shown),
        also_fits=tuple(p for p in draft.also_fits if p in said - fallen_words),
        ruled_out=tuple(r for r in draft.ruled_out if r.part_no in said),
        question=draft.question,
        also_asked=tuple(draft.also_asked),
        causes=tuple(draft.causes),
        checks=seen.checks,
        sources=tuple(draft.sources),
        cautions=tuple(draft.cautions),
        toilet=toilet,
    )


def _check(shop: Shop, case: Case, draft: Draft, message: str, original: bool) -> Checked:
    return check(
        draft.text,
        shop.tables,
        audience=case.audience,
        statements=statements(shop),
        message=message,
        valve_is_original=original,
        currency=case.currency,
    )


def named_in(text: str) -> frozenset[str]:
    """The words of a text that may be part numbers, whole: 'SL-20' does not stand in 'SL-204'."""
    return frozenset(word.strip('*.,;:()"') for word in text.split())


def _stands(draft: Draft, seen: Checked) -> bool:
    """Whether no main statement was taken out, and something is left to say."""
    fallen = " ".join(seen.taken_out)
    main = [_bare(sentence) for sentence in draft.main]
    return bool(seen.text.strip()) and not any(m in _bare(fallen) for m in main)


def _bare(text: str) -> str:
    return " ".join(text.replace("*", "").split())


@lru_cache(maxsize=8)
def statements(shop: Shop) -> Statements:
    """Every sentence that may be said because a note or a table of questions says it."""
    found = [
        Statement(line.text, f"{note.name}.md:{line.line}", note.audience == "staff", note.title)
        for note in shop.notes.values()
        for section in note.sections.values()
        for line in section.sentences
    ]
    for key, policy in shop.settings.policies.items():
        found += [Statement(s, f"shop.toml:{key}") for s in in_sentences(policy)]
    for question in shop.tables.questions.values():
        said = (question.text, question.why, question.how)
        found += [Statement(s, f"questions:{question.question}") for s in said if s]
    for cause in shop.tables.causes.values():
        found += [Statement(s, f"causes:{cause.cause}") for s in (cause.check, cause.remedy) if s]
    return Statements(found)
