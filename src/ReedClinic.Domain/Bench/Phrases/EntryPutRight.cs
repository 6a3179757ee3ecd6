using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“No, two strokes not three”, “correction, the crow is C not D”, “I meant the lower blade”: an entry as it was meant.</summary>
public static class EntryPutRight
{
    // The least, in millimetres, that is clipped and no more than a hair.
    private const decimal Hair = 0.3m;

    private static readonly HashSet<string> AfterNo = ["that", "it", "i", "sorry", "wait", "the", "this", "hang", "hold"];

    private static readonly HashSet<string> Units = ["mm", "millimetre", "millimetres", "millimeter", "millimeters", "tenth", "tenths", "stroke", "strokes", "pass", "passes"];

    /// <summary>The entry as it was meant.</summary>
    /// <param name="text">What was typed or said.</param>
    /// <param name="before">The entry that it may put right.</param>
    /// <param name="context">What stands on this reed.</param>
    /// <param name="alone">True where the words must say by themselves that something is put right.</param>
    /// <returns>The same entry with the place, the amount, the pitch or the word of its scale that was meant; null where the words say anything else.</returns>
    public static BenchEntry? Of(string? text, BenchEntry? before, PhraseContext context, bool alone)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (before is null || PlainText.Tidy(text) is not { Length: <= PhraseReader.LongestPhrase } said || said.Contains('?', StringComparison.Ordinal))
        {
            return null;
        }

        var tokens = Tokenizer.Cut(said);
        if (RightCommand.Rest(said, tokens) is { } rest)
        {
            return Denied(rest, Tokenizer.Cut(rest), before, context, alone) ?? OfTheLast(rest, before, context, alone);
        }

        if ((SaidWrong.OfTheLast(said, tokens) ?? SaidWrong.OnlyOne(said, tokens)) is { } other)
        {
            return Stands(before, context, alone) ? Otherwise(other, Tokenizer.Cut(other), before, context, alone: false, bare: false) : null;
        }

        if (LeadTakenBack.Count(tokens) is > 0 and var lead)
        {
            return LastTakenBack.Says(said) ? null : OfTheLast(said[tokens[lead].Start..], before, context, alone);
        }

        return MakeThat.IsWish(tokens) ? null
            : Denied(said, tokens, before, context, alone)
            ?? Otherwise(said, tokens, before, context, alone, bare: alone)
                ?? (MakeThat.Rest(said, tokens) is { } made ? OfTheLast(made, before, context, alone, isMade: true) : null);
    }

    // “Amend that, …”, “scratch that, …”, “make that …”: what is said behind it stands instead of what was said last, and of nothing older.
    private static BenchEntry? OfTheLast(string rest, BenchEntry before, PhraseContext context, bool alone, bool isMade = false) =>
        !Stands(before, context, alone) ? null
        : Tokenizer.Cut(rest) is var tokens && NotInstead.SpeaksElsewhere(tokens) ? null
        : Otherwise(rest, tokens, before, context, alone: false) ?? (!PlacePutRight.Agrees(tokens) && Instead(rest, before, context) is { } instead && (!isMade || MakeThat.IsSame(before, instead, rest)) ? instead : null);

    private static bool Stands(BenchEntry before, PhraseContext context, bool alone) => before is not (Stopped or Verdict or CauseJudged or Undo or Parked or AdviceSetAside) && !(alone && context.Log.Told.MaxBy(fact => fact.Now!.Sequence)?.Now?.Id != before.Id);

    // “Three strokes was wrong, five strokes”.
    private static BenchEntry? Denied(string said, List<Token> tokens, BenchEntry before, PhraseContext context, bool alone) =>
        SaidWrong.Behind(said, tokens, before) is { } right ? OfTheLast(right, before, context, alone, isMade: true) : null;

    private static BenchEntry? Otherwise(string said, List<Token> tokens, BenchEntry before, PhraseContext context, bool alone, bool bare = true)
    {
        return PlacePutRight.Agrees(tokens, bare) ? null : before is Adjustment counted && (!alone || PutsRight(tokens, before)) && EachPutRight.Of(counted, said, tokens) is { } each ? each : PlacePutRight.Of(Meant(said, tokens, strip: false), before, alone) ?? (alone && !PutsRight(tokens, before) ? null : before switch
        {
            Adjustment work => AmountOf(work, said, tokens) ?? ZonePutRight.Of(work, Meant(said, tokens, strip: true), said, context),
            Finding found => ZonePutRight.Of(found, Meant(said, tokens, strip: true), said, context),
            Test { MeasuredFrom: null } test when PutsRight(tokens, before) => TestOf(test, Meant(said, tokens, strip: true), said, context),
            _ => null,
        });
    }

    // “Correct the last one: needs a push”: what is said of nothing that stands before it takes its place whole; how much work was done is said of work.
    private static BenchEntry? Instead(string rest, BenchEntry before, PhraseContext context) =>
        PhraseReader.Read(rest, context) is { Entries: [{ Kind: EntryKind.Test or EntryKind.Finding or EntryKind.Adjustment or EntryKind.LeaveAlone or EntryKind.LookedFor or EntryKind.FindingEnded } read], Kept.Count: 0 }
            && read.ToEntry(context) is Outcome<BenchEntry>.Done(var entry) && IsItsEnd(before, entry) && !NotInstead.LeansOn(before, entry, rest)
            && (read.Doubts.Count == 0 || read.Kind == before.Kind && read.Doubts.All(doubt => doubt.Slot is not ("kind" or "zone") || doubt.Slot is "kind" && IsTheSqueeze(before, entry, rest))) ? InItsWay(before, entry, rest).AsSaid(rest) : null;

    // “Undo that, it’s still ragged”: the fault stands, and what is given up is its end or what was done to it.
    private static bool IsItsEnd(BenchEntry before, BenchEntry entry) => entry is not FindingEnded now
        || before is FindingEnded was && was.FindingId == now.FindingId || before is Adjustment && now.Ending is FindingEnding.Unchanged;

    // Which way a squeeze goes is known where one stands.
    private static bool IsTheSqueeze(BenchEntry before, BenchEntry entry, string rest) => before is Adjustment was && entry is Adjustment now
        && (Squeezes.TurnsRound(was, now, rest) || was.AdjustmentKind == now.AdjustmentKind && was.AdjustmentKind.Value is "open-squeeze" or "close-press");

    // “Make that a good squeeze” says how much, and not the other way.
    private static BenchEntry InItsWay(BenchEntry before, BenchEntry entry, string rest) =>
        before is Adjustment was && entry is Adjustment now && Squeezes.TurnsRound(was, now, rest)
            && Adjustment.Of(was.AdjustmentKind, was.Place, now.Amount == default ? was.Amount : now.Amount, was.ForFindingId, was.ForTheSakeOf, now.Words) is Outcome<Adjustment>.Done(var kept) ? kept : entry;

    // “Actually no, B flat”, “wait no, B flat”: what leads up to it puts right, where nothing says that it is so by now.
    private static bool Leads(List<Token> tokens)
    {
        var lead = tokens.TakeWhile(token => token.Kind is TokenKind.Break || RightWords.Lead.Contains(token.Text)).Select(token => token.Text).ToList();
        return (lead.Contains("actually") || lead.Contains("wait") || lead.Contains("hang") || lead.Contains("hold") || lead.Count(word => word is "no" or "nope") > 1)
            && !tokens.Exists(token => token.Text is "now" or "again" or "still" or "then" or "after");
    }

    // “Sorry, …”, “I meant …”, “make that …”, “no, …”, “no that was …”, but not “no change”; “it should be C” is what is wanted, not what was meant.
    private static bool PutsRight(List<Token> tokens, BenchEntry before) => tokens.Count > 1 && (tokens.Take(4).Any(token => RightWords.Surely.Contains(token.Text))
        || before is Adjustment && BareCount.Says(tokens) || before is Test && Leads(tokens)
        || tokens[0].Text is "make" && tokens[1].Text is "that" or "it" || before is Adjustment && tokens[0].Text is "should" || tokens.Take(2).Zip(tokens.Skip(1)).Any(pair => pair.First.Text is "should" && pair.Second.Text is "have" or "say")
        || tokens[0].Text is "no" or "nope" && (tokens[1].Kind is TokenKind.Break || AfterNo.Contains(tokens[1].Text) || tokens.Exists(token => token.Is("not"))));

    /// <summary>What was meant, without what it was put right with and without what it was not: “correction, the crow is C not D” is “the crow is C”.</summary>
    private static string Meant(string said, List<Token> tokens, bool strip)
    {
        var first = 0;
        while (strip && first < tokens.Count && (tokens[first].Kind is TokenKind.Break || RightWords.Lead.Contains(tokens[first].Text)))
        {
            first++;
        }

        var not = tokens.FindIndex(first < tokens.Count ? first : 0, token => token.Is("not"));
        var end = not > first && not + 1 < tokens.Count && tokens.Skip(first).Take(not - first).Any(token => token.Kind is not TokenKind.Break && !RightWords.Lead.Contains(token.Text)) ? not : tokens.Count;
        return first >= end ? "" : said[tokens[first].Start..tokens[end - 1].End].Trim(' ', ',', ';', '–', '-', '—');
    }

    private static Adjustment? AmountOf(Adjustment work, string said, List<Token> tokens)
    {
        // “No, one more stroke” is work that is still to come.
        if (tokens.Where((token, at) => token.Text is "less" or "another" || token.Text is "more" && !BareCount.IsMoreLike(tokens, at)).Any())
        {
            return null;
        }

        decimal? number = null;
        var unit = "";
        var deniedUnit = "";
        for (var at = 0; at < tokens.Count;)
        {
            var isDenied = at > 0 && tokens[at - 1].Is("not");
            if (Numbers.At(tokens, at, tokens.Count) is { } counted && !(tokens[at].Is("one") && at + 1 < tokens.Count && tokens[at + 1].Kind is TokenKind.Word && !BareCount.Beside.Contains(tokens[at + 1].Text)))
            {
                if (!isDenied && number is not null)
                {
                    return null;
                }

                var unitAt = counted.End < tokens.Count && tokens[counted.End].Text is "a" or "of" ? tokens.FindIndex(counted.End, token => token.Text is not ("a" or "of")) : counted.End;
                var after = unitAt >= 0 && unitAt < tokens.Count ? tokens[unitAt].Text : "";
                (number, unit, deniedUnit) = isDenied ? (number, unit, after) : (counted.Value, after, deniedUnit);
                at = counted.End;
                continue;
            }

            if (tokens[at].Kind is TokenKind.Word && !RightWords.Lead.Contains(tokens[at].Text) && !BareCount.Beside.Contains(tokens[at].Text) && !BareCount.IsMoreLike(tokens, at))
            {
                return null;
            }

            at++;
        }

        return number is { } value and > 0 and <= Amount.MostStrokes && Amounted(work, value, Units.Contains(unit) ? unit : deniedUnit) is { } amount
            && Adjustment.Of(Sized(work.AdjustmentKind, amount), work.Place, amount, work.ForFindingId, work.ForTheSakeOf, PlacePutRight.Reworded(work, said)) is Outcome<Adjustment>.Done(var done) ? done : null;
    }

    // A clip of three tenths and more is no hair.
    private static AdjustmentKindId Sized(AdjustmentKindId kind, Amount amount) => amount.Millimetres is not { } clipped || kind.Value is not ("clip" or "clip-hair") ? kind : new(clipped < Hair ? "clip-hair" : "clip");

    // A bare number is of what was counted before; a whole one beside a part of a millimetre is of tenths, and none that a knife could not have meant.
    private static Amount? Amounted(Adjustment work, decimal value, string unit) => unit switch
    {
        "mm" or "millimetre" or "millimetres" or "millimeter" or "millimeters" => new Amount(work.AmountStrokes, value),
        "tenth" or "tenths" => new Amount(work.AmountStrokes, value / 10),
        "stroke" or "strokes" or "pass" or "passes" when MakeThat.IsClip(work) => null,
        "stroke" or "strokes" or "pass" or "passes" when value == Math.Truncate(value) => new Amount((int)value, work.Amount.Millimetres),
        _ when work.AmountStrokes is not null && value == Math.Truncate(value) => work.Amount with { Strokes = (int)value, Words = null },
        _ when work.AmountStrokes is null && work.AmountMicrometres is < 1000 => value switch
        {
            < 1 => work.Amount with { Millimetres = value, Words = null },
            < 10 when value == Math.Truncate(value) => work.Amount with { Millimetres = value / 10, Words = null },
            _ => null,
        },
        _ when work.AmountStrokes is null && work.AmountMicrometres is not null => work.Amount with { Millimetres = value, Words = null },
        _ => null,
    };

    // The same test, said anew: what isn’t said of it stays.
    private static Test? TestOf(Test test, string meant, string said, PhraseContext context) =>
        meant.Length > 0 && PhraseReader.Read(meant, context) is { Entries: [{ Kind: EntryKind.Test, Slots: { Test: { } kind, Change: null } } read], Kept.Count: 0 } && kind == test.TestKind
            && read.ToEntry(context) is Outcome<BenchEntry>.Done(Test { } now) && (now.Step is not null || now.Pitch is not null || now.Millimetres is not null)
            && Test.Of(test.TestKind, now.Step ?? test.Step, now.Pitch ?? test.Pitch, PlacePutRight.With(test.Words, said), now.Millimetres) is Outcome<Test>.Done(var right) ? right : null;
}
