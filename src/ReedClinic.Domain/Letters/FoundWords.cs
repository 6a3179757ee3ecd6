using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>What was found on a reed. What was explained once, here or at the beginning of the letter, is only named after that.</summary>
internal sealed class FoundWords
{
    private readonly Reed _reed;
    private readonly BenchLog _log;
    private readonly Phrasing _phrasing;
    private readonly LetterSoFar _told;
    private readonly HashSet<EntryId> _ended = [];
    private readonly Dictionary<EntryId, ComplaintWordings.FirstFrames> _firsts = [];
    private TestKind? _asked;
    private FindingKindId? _last;
    private int _turn;

    /// <summary>Makes ready to tell it.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="phrasing">Chooses the words.</param>
    /// <param name="told">What was told so far.</param>
    internal FoundWords(Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told) =>
        (_reed, _log, _phrasing, _told, _turn) = (reed, log, phrasing, told, reed.Number);

    /// <summary>Whether a fault was told before all else.</summary>
    /// <param name="fault">The fault.</param>
    internal bool IsFirst(FindingNow fault) => _firsts.ContainsKey(fault.Fact.Root);

    /// <summary>Tells of a fault before all else.</summary>
    /// <param name="fault">The fault.</param>
    /// <param name="frames">How.</param>
    /// <param name="asked">The test that would have answered what was asked, if one would.</param>
    internal List<LetterSentence> First(FindingNow fault, ComplaintWordings.FirstFrames frames, TestKind? asked = null)
    {
        (_firsts[fault.Fact.Root], _asked) = (frames, asked);
        List<LetterSentence> said = [.. Tell(fault)];
        _asked = null;
        return said;
    }

    /// <summary>What was found, as a clause for somebody else’s sentence: it isn’t told again.</summary>
    /// <param name="taste">The finding.</param>
    internal string Told(FindingNow taste)
    {
        _firsts[taste.Fact.Root] = ComplaintWordings.First;
        return What(taste.Finding, false);
    }

    /// <summary>How a finding ended was said already: it isn't said again.</summary>
    /// <param name="finding">The finding's first entry.</param>
    internal void SaysItsEnd(EntryId finding) => _ended.Add(finding);

    /// <summary>Tells of all that was not told first.</summary>
    internal List<LetterSentence> Rest()
    {
        var found = Latest().Where(finding => !IsFirst(finding)).OrderBy(finding => finding.Fact.Sequence).ToLookup(finding => finding.Finding.Character);
        return
        [
            .. Strengths([.. found[FindingCharacter.Strength]]),
            .. found[FindingCharacter.Taste].Concat(found[FindingCharacter.Fault].OrderBy(fault => fault.Finding.Arose).GroupBy(fault => fault.Finding.FindingKind).SelectMany(kind => kind)).SelectMany(Tell),
        ];
    }

    // What was written down of one place twice is told once, as it was said last.
    private IEnumerable<FindingNow> Latest() => _log.Findings.GroupBy(finding => FindingCatalogue.Find(finding.Finding.FindingKind) is null || finding.Finding.Words is not null
            ? (object)finding.Fact.Root : (finding.Finding.FindingKind, finding.Finding.Character, finding.Finding.Place))
        .Select(same => same.FirstOrDefault(IsFirst) ?? same.MaxBy(finding => finding.Fact.Sequence)!);

    private IEnumerable<LetterSentence> Strengths(List<FindingNow> strengths)
    {
        var known = strengths.Where(strength => _told.Explained(strength.Finding.FindingKind) || !IsPraise(strength.Finding.FindingKind)).ToList();
        foreach (var strength in strengths.Except(known).ToList())
        {
            yield return new(Praise(strength.Finding), [strength.Fact.Root]);
            _told.Explain(strength.Finding.FindingKind, _reed.Number);
        }

        foreach (var few in known
            .Where(strength => FindingWording.Of(strength.Finding.FindingKind) is not null && !(strength.Finding.Arose != Arose.CausedByTheWork && _told.SaidAtFirst(strength.Finding.FindingKind)))
            .DistinctBy(strength => strength.Finding.FindingKind).Chunk(3))
        {
            var whats = Prose.Clauses([.. few.Select(strength => What(strength.Finding, false))]);
            yield return new(
                _phrasing.Say("good-here", _turn++, FindingFrames.StrengthAgain, ("whats", whats)), [.. few.Select(strength => strength.Fact.Root)]);
        }

        foreach (var strength in strengths)
        {
            if (OwnId.Is(strength.Finding.FindingKind.Value))
            {
                foreach (var sentence in OwnKind(strength))
                {
                    yield return sentence;
                }
            }
            else if (strength.Finding.Words is { } words)
            {
                yield return new(PartPraised.Say(words, _log.Findings, IsFirst, _turn, _phrasing), [strength.Fact.Root]);
            }
        }
    }

    // The teacher’s own sentence about it, and after it what such a thing does in general.
    private IEnumerable<LetterSentence> InTheirWords(FindingNow now, FindingWording wording, string clause)
    {
        var kind = now.Finding.FindingKind;
        yield return new(Prose.Sentence(clause), [now.Fact.Root]);
        if (wording.Shows is { } shows && !_told.Explained(kind) && FindingCatalogue.Find(kind)?.Usually == FindingCharacter.Fault)
        {
            yield return new(_phrasing.Say("shows-alone", _turn, FindingFrames.ShowsAlone, ("shows", _phrasing.Clause("shows-" + kind.Value, _turn, [shows], false))), [now.Fact.Root]);
        }

        if (now.Ended is { } ended && EndIsOurs(now))
        {
            yield return new(_phrasing.Say("that-" + ended.Now.Ending, _turn, PutRight.Without(FindingFrames.EndingsAlone[ended.Now.Ending], PutRight.IsWorkedOn(now, _log))), [now.Fact.Root, ended.Root]);
        }
    }

    private IEnumerable<LetterSentence> Tell(FindingNow now)
    {
        var finding = now.Finding;
        if (FindingWording.Of(finding.FindingKind) is not { } wording)
        {
            foreach (var sentence in OwnId.Is(finding.FindingKind.Value) ? OwnKind(now) : [new(BenchSaid.Sentence(finding.Words ?? "", _turn, _phrasing, now.IsPast(_log) || now.Ended is not null), [now.Fact.Root])])
            {
                yield return sentence;
            }

            if (finding.Character == FindingCharacter.Fault && now.Ended is { } closed && EndIsOurs(now))
            {
                var ending = _phrasing.Say("that-" + closed.Now.Ending, _turn, PutRight.Without(FindingFrames.EndingsAlone[closed.Now.Ending], PutRight.IsWorkedOn(now, _log)));
                yield return new(ending, [now.Fact.Root, closed.Root]);
            }
        }
        else if (finding.Character == FindingCharacter.Taste)
        {
            yield return new(_phrasing.Say("taste", _turn++, ComplaintsMarked.Holds(_reed, finding.FindingKind) ? FindingFrames.TasteShared : FindingFrames.Taste, ("what", What(finding, false))), [now.Fact.Root]);
        }
        else
        {
            foreach (var sentence in RemarkSaid.Clause(finding) is { } clause && !IsFirst(now) ? InTheirWords(now, wording, clause) : [Fault(now, wording)])
            {
                yield return sentence;
            }
        }

        foreach (var sentence in Remarks(now))
        {
            yield return sentence;
        }

        _told.Explain(finding.FindingKind, _reed.Number, finding.Certainty == Certainty.Suspected);
        (_last, _turn) = (finding.FindingKind, _turn + 1);
    }

    // The studio’s own kind: its name in quotation marks, the sentence that explains it once, and what was remarked on this reed.
    private IEnumerable<LetterSentence> OwnKind(FindingNow now)
    {
        var finding = now.Finding;
        var kind = finding.FindingKind;
        IReadOnlyList<EntryId> roots = [now.Fact.Root];
        var again = _told.Earlier(kind, _reed.Number);
        var where = LetterPlaces.On(finding.Place);
        var (place, ways) = finding.Character == FindingCharacter.Strength ? ("own-good", FindingFrames.OwnStrength)
            : finding.Certainty == Certainty.Suspected ? ("own-suspected", FindingFrames.OwnSuspected)
            : again is null ? ("own", FindingFrames.Own) : ("own-again", FindingFrames.OwnAgain);
        yield return new(
            _phrasing.Say(place, _turn++, ways, ("name", Prose.Quoted(OwnId.Called(finding.Words)) + (where.Length == 0 ? "" : $" ({where})")), ("earlier", again ?? "")), roots);
        if (!_told.Explained(kind) && _told.Own.LineOf(kind.Value) is { } line)
        {
            yield return new(Prose.Sentence(line), roots);
        }

        if (OwnId.Remark(kind.Value, finding.Words) is { } remark)
        {
            yield return new(BenchSaid.Sentence(remark, _turn, _phrasing), roots);
        }

        _told.Explain(kind, _reed.Number);
    }

    private IEnumerable<LetterSentence> Remarks(FindingNow now)
    {
        var finding = now.Finding;
        if (FindingCatalogue.Find(finding.FindingKind) is not null && RemarkSaid.Sentence(finding, now.IsPast(_log), _turn, _phrasing) is { } remark)
        {
            yield return new(remark, [now.Fact.Root]);
        }

        if (finding is { Character: FindingCharacter.Fault, Arose: Arose.CausedByTheWork })
        {
            yield return new(_phrasing.Say("at-my-bench", _turn, FindingFrames.AtMyBench), [now.Fact.Root]);
        }

        if (finding.Character == FindingCharacter.Fault && now.Ended is { Now.Words: { } said } ended && !EndingSaid.IsOnlyThat(said, finding))
        {
            yield return new(BenchSaid.Sentence(said, _turn, _phrasing), [now.Fact.Root, ended.Root]);
        }
    }

    private LetterSentence Fault(FindingNow now, FindingWording wording)
    {
        var finding = now.Finding;
        var was = now.IsPast(_log);
        var again = finding.Arose != Arose.CausedByTheWork ? _told.Earlier(finding.FindingKind, _reed.Number, finding.Certainty == Certainty.Suspected) : null;
        var (place, frames) = Frames(now, wording, was, again is not null);
        // How it ended comes behind a semicolon of its own.
        IReadOnlyList<string> ways = now.Ended is not null && frames.Any(way => !way.Contains(';', StringComparison.Ordinal)) ? [.. frames.Where(way => !way.Contains(';', StringComparison.Ordinal))] : frames;
        var does = (Asked(wording) ?? wording.Shows) is { } shows ? _phrasing.Clause("shows-" + finding.FindingKind.Value, _turn, [shows], false) : "";
        var sentence = _phrasing.Say(
            place,
            _turn,
            ways,
            ("what", FoundWhat.Of(finding, was, _turn, _phrasing, place != "same-elsewhere")),
            ("shows", does),
            ("earlier", again ?? ""),
            ("place", LetterPlaces.On(finding.Place) is { Length: > 0 } on ? on : "at " + LetterPlaces.Name(finding.Zone)));
        if (does.Length > 0 && sentence.Contains(does, StringComparison.Ordinal))
        {
            _told.ExplainWhatItDoes(finding.FindingKind);
        }

        if (now.Ended is not { } ended || !EndIsOurs(now))
        {
            return new(sentence + ".", [now.Fact.Root]);
        }

        var endings = finding.Certainty == Certainty.Suspected ? FindingFrames.EndingsSuspected : FindingFrames.Endings;
        var worked = PutRight.IsWorkedOn(now, _log);
        var soNow = ended.Now.Ending == FindingEnding.Gone && finding.Certainty != Certainty.Suspected && worked ? PutRight.EndsOf(finding) : null;
        var ending = _phrasing.End(sentence, "ended-" + ended.Now.Ending, _turn, soNow ?? PutRight.Without(endings[ended.Now.Ending], worked));
        return new($"{sentence}{ending}.", [now.Fact.Root, ended.Root]);
    }

    /// <summary>A test was told: it isn’t told again.</summary>
    /// <param name="test">The test.</param>
    internal void SaysTest(TestKind test) => _told.TellTest(test, _reed.Number);

    /// <summary>Whether a test of this reed was told.</summary>
    /// <param name="test">The test.</param>
    internal bool HasSaidTest(TestKind test) => _told.ToldTest(test, _reed.Number);

    // How it ended is said once: here, before this, or after it in the teacher's own words.
    private bool EndIsOurs(FindingNow now) =>
        !_ended.Contains(now.Fact.Root) && !now.IsAgainstItsTest(_log) && !EndingSaid.GoesWithoutSaying(now) && !(now.Ended?.Now.Words is { } said && EndingSaid.SaysIt(said) && !EndingSaid.IsOnlyThat(said, now.Finding));

    private (string Place, IReadOnlyList<string> Ways) Frames(FindingNow now, FindingWording wording, bool was, bool again)
    {
        var finding = now.Finding;
        var suspected = finding.Certainty == Certainty.Suspected;
        if (!suspected && _firsts.TryGetValue(now.Fact.Root, out var first))
        {
            return again && Asked(wording) is null ? (first.Place + "-again", first.Again)
                : wording.Shows is null || FindingCatalogue.Find(finding.FindingKind)?.Usually != FindingCharacter.Fault ? (first.Place + "-only", first.Only) : (first.Place + "-found", first.Found);
        }

        if (again || _told.ToldOf(finding.FindingKind, _reed.Number))
        {
            return _last == finding.FindingKind ? ("same-here", FindingFrames.SameHere)
                : _told.ToldOf(finding.FindingKind, _reed.Number) ? ("same-elsewhere", FindingFrames.SameElsewhere)
                : suspected && finding.IsShownIn(_log) ? ("suspected-shown", FindingFrames.SuspectedShown)
                : suspected ? ("again-suspected", FindingFrames.AgainSuspected) : ("again", FindingFrames.Again);
        }

        if (wording.Shows is null || (!suspected && _told.Explained(finding.FindingKind) && !_told.SaidAtFirst(finding.FindingKind)) || FindingCatalogue.Find(finding.FindingKind)?.Usually != FindingCharacter.Fault)
        {
            return ("only", FindingFrames.Only);
        }

        if (suspected)
        {
            return finding.IsShownIn(_log) ? ("suspected-shown", FindingFrames.SuspectedShown) : ("suspected", FindingFrames.Suspected);
        }

        var known = Enum.GetValues<KnownBy>().Where(way => way != KnownBy.NotSaid && finding.KnownBy.HasFlag(way)).ToList();
        return now.Fact.Pass > 0 && finding.Arose != Arose.CausedByTheWork ? ("seen-later", FindingFrames.SeenLater)
            : known.Count > 0 && (known.Count + _turn) % 2 == 0 ? ("known", FindingFrames.Known[known[_turn % known.Count]])
            : was && finding.Arose == Arose.AsItArrived ? ("fault-was", wording.EndsInTime ? FindingFrames.FaultThatWasThen : FindingFrames.FaultThatWas)
            : ("fault", FindingFrames.Fault);
    }

    // What answers a reed that is hard to blow, where that is what was asked.
    private string? Asked(FindingWording wording) => _asked == TestKind.Effort ? wording.ShowsInEffort : null;

    private string Praise(Finding finding) => _phrasing.Say(
        "strength",
        _turn++,
        FindingFrames.Strength,
        ("what", What(finding, false)),
        ("shows", _phrasing.Clause("shows-" + finding.FindingKind.Value, _turn, [FindingWording.Of(finding.FindingKind)!.Shows!], false)));

    private static bool IsPraise(FindingKindId kind) =>
        FindingCatalogue.Find(kind)?.Usually == FindingCharacter.Strength && FindingWording.Of(kind) is { Shows: not null };

    private string What(Finding finding, bool was) => FoundWhat.Of(finding, was, _turn, _phrasing);
}
