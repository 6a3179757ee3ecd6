using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Letters;

/// <summary>Whether what the last letter taught shows again: said where it was looked for on these reeds, and nowhere else.</summary>
internal sealed class LessonBefore
{
    private readonly EarlierLesson _before;
    private readonly string _what;
    private readonly IReadOnlyList<(int Number, SheetCell Cell)> _cells;
    private readonly IReadOnlyList<EntryId> _roots;
    private readonly bool _isTheLesson;
    private readonly bool _isSaidAgain;

    // Tired cane and a loose cork aren’t learnt over a few reeds.
    private readonly bool _isOfTheHand;
    private readonly Phrasing _phrasing;

    private LessonBefore(EarlierLesson before, string what, LetterMaterial material, Phrasing phrasing)
    {
        List<Reed> here = [.. material.Batch.Reeds.Where(reed => reed.Presence != Presence.Missing)];
        var sheet = new FindingSheet([.. here.Select(reed => reed.Id)], here.SelectMany(reed => SheetRow.Of(reed.Id, material.LogOf(reed.Id))));
        (_before, _what, _phrasing) = (before, what, phrasing);
        _cells = [.. here.Select(reed => (reed.Number, sheet.Cell(before.Kind, reed.Id)))];
        _isOfTheHand = TeachingNote.For(before.Kind, material.Batch.Scrape) != WholeReedLessons.Keeping;
        _isSaidAgain = before.Words is { } words && material.Thread.LessonWords?.Contains(words.TrimEnd('.'), StringComparison.OrdinalIgnoreCase) == true;
        _isTheLesson = material.Thread.LessonKind == before.Kind;
        _roots =
        [
            .. before.From,
            .. here.Select(reed => material.LogOf(reed.Id)).SelectMany(log => log.Live<Finding>().Where(fact => fact.Now.FindingKind == before.Kind).Select(fact => fact.Root)
                .Concat(log.Live<LookedFor>().Where(fact => fact.Now.FindingKind == before.Kind).Select(fact => fact.Root))),
        ];
    }

    /// <summary>Reads it; null where there was no earlier letter, or nothing was recorded that tells.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static LessonBefore? Of(LetterMaterial material, Phrasing phrasing) =>
        material.Earlier is { Words: not null } inWords ? new LessonBefore(inWords, "", material, phrasing) :
        material.Earlier is { } before && FindingWording.Of(before.Kind) is { Shows: not null } wording
        && new LessonBefore(before, phrasing.Clause("before-what", 0, [wording.What], true), material, phrasing) is { Looked.Count: > 0 } again ? again : null;

    /// <summary>Whether it is on none of the reeds that were looked at for it: that is something good.</summary>
    internal bool IsGone => _before.Words is null && Looked.All(one => one.Cell.Answer == SheetAnswer.No);

    private IReadOnlyList<(int Number, SheetCell Cell)> Looked => [.. _cells.Where(one => one.Cell is { Answer: SheetAnswer.No } or { Answer: SheetAnswer.Yes, Character: FindingCharacter.Fault })];

    /// <summary>The one or two sentences, as one: no word is explained between them.</summary>
    internal LetterSentence Sentence() => _before.Words is { } words ? InWords(words) : IsGone ? Gone() : Again();

    // No log tells whether it helped: it is asked, and not claimed.
    private LetterSentence InWords(string words) => LetterSentence.Plain(
        _phrasing.Say("before-words", 0, _isSaidAgain ? EarlierWordings.WordsAgain : EarlierWordings.Words, ("quote", Prose.Quote(words))));

    private LetterSentence Gone()
    {
        List<int> looked = [.. Looked.Select(one => one.Number)];
        (string, string)[] slots = [("then", Then()), ("what", _what), ("where", In(looked)), ("none", None(looked))];
        var gone = _phrasing.Say("before-gone", 0, _cells.Count == looked.Count ? [.. EarlierWordings.Gone, .. EarlierWordings.GoneFromAll] : EarlierWordings.Gone, slots);
        return new($"{gone} {_phrasing.Say("before-glad", 0, EarlierWordings.Glad)}", _roots);
    }

    private LetterSentence Again()
    {
        List<int> sure = [.. _cells.Where(one => EarlierLesson.IsThere(one.Cell)).Select(one => one.Number)];
        List<int> there = sure.Count > 0 ? sure : [.. Looked.Where(one => one.Cell.Answer == SheetAnswer.Yes).Select(one => one.Number)];
        (string, string)[] slots = [("then", Then()), ("what", _what), ("where", In(there))];
        var (place, ways) = (_isTheLesson, sure.Count > 0) switch
        {
            (true, _) => ("before-same", EarlierWordings.Same),
            (_, true) => ("before-again", EarlierWordings.Again),
            _ => ("before-suspected", EarlierWordings.Suspected),
        };
        var how = IsFewer(there.Count) ? _phrasing.Say("before-fewer", 0, EarlierWordings.Fewer)
            : _isOfTheHand ? _phrasing.Say("before-time", 0, EarlierWordings.TakesTime)
            : null;
        var again = _phrasing.Say(place, 0, ways, slots);
        return new(how is null ? again : $"{again} {how}", _roots);
    }

    // Only where every reed was looked at for it, then and now, are the two to be compared; three of four are no less than one of one to whoever reads it.
    private bool IsFewer(int there) => Looked.Count == _cells.Count && _before.Count.Looked == _before.Count.Reeds
        && there < _before.Count.Found && there * _before.Count.Reeds < _before.Count.Found * _cells.Count;

    private string Then() => _before.Count switch
    {
        { Reeds: 1 } => "in your reed",
        { Found: 2, Reeds: 2 } => "in both reeds",
        var count when count.Found == count.Reeds => $"in all {Prose.Number(count.Reeds)} reeds",
        var count when count.Looked == count.Reeds => $"in {Prose.Number(count.Found)} of your {Prose.Number(count.Reeds)} reeds",
        { Found: 1 } => "in one reed",
        var count => $"in {Prose.Number(count.Found)} reeds",
    };

    private string In(List<int> numbers) => SeenIn.Reeds(numbers, _cells.Count) ?? "in this reed";

    private static string None(List<int> looked) => looked.Count switch { 1 => "this one does not have it", 2 => "neither of the two has it", var many => $"none of the {Prose.Number(many)} has it" };
}
