using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is denied, or said to be broken, is never recorded as praise or as the best word of a scale.</summary>
public sealed class DeniedBestTests
{
    private static readonly string[] Denials = ["isn’t {0}", "is not {0}", "not {0}", "never {0}", "is no longer {0}", "hardly {0}", "barely {0}", "is anything but {0}", "far from {0}", "nowhere near {0}", "not at all {0}", "isn’t very {0}", "not quite {0}"];

    private static readonly string[] Broken = ["broken", "broken through", "cut through", "gone", "missing", "damaged", "torn", "no longer there"];

    public static TheoryData<string, string> Strengths => new()
    {
        { "opening", "even" },
        { "spine", "intact" },
        { "spine", "whole" },
        { "rails", "intact" },
        { "rails", "whole" },
        { "tip", "clearly set off" },
        { "tip", "well separated" },
        { "slope", "smooth" },
        { "heart", "well kept" },
        { "blades", "matched" },
        { "blades", "alike" },
        { "thread", "straight" },
    };

    public static TheoryData<string, string> BestWords => new()
    {
        { "opening", "right" },
        { "effort", "right" },
        { "edge", "right" },
        { "sound", "full" },
        { "tuning note", "in tune" },
        { "peep", "clean" },
        { "tongued starts", "clean every time" },
        { "low D", "prompt" },
        { "low notes", "secure" },
        { "high notes", "steady" },
        { "swell", "steady" },
        { "seal", "tight" },
    };

    [Theory]
    [MemberData(nameof(Strengths))]
    public void A_denied_strength_is_never_that_strength(string part, string praise) =>
        Assert.All(Denials, denial => AssertNoPraise($"{part} {string.Format(null, denial, praise)}"));

    [Theory]
    [MemberData(nameof(Strengths))]
    public void What_is_broken_or_gone_is_no_strength(string part, string praise)
    {
        Assert.NotEmpty(praise);
        Assert.All(Broken, broken => AssertNoPraise($"{part} {broken}"));
        Assert.All(Broken, broken => AssertNoPraise($"{part} is {broken}"));
    }

    [Theory]
    [MemberData(nameof(BestWords))]
    public void A_denied_best_word_is_never_that_word(string test, string best) =>
        Assert.All(Denials, denial => AssertNoBest($"{test} {string.Format(null, denial, best)}"));

    [Theory]
    [InlineData("spine broken through", "finding kind=spine-scraped character=Fault zone=Spine")]
    [InlineData("spine not intact", "finding kind=spine-scraped character=Fault zone=Spine")]
    [InlineData("rails are no longer whole", "finding kind=rails-cut character=Fault zone=Rails")]
    [InlineData("blades anything but matched", "finding kind=blades-uneven character=Fault zone=WholeReed")]
    [InlineData("heart isn’t well kept", "note")]
    [InlineData("tip never clearly set off", "finding kind=tip-not-separate character=Fault zone=Rooftop")]
    [InlineData("the slope isn’t smooth enough", "finding kind=step-abrupt character=Fault zone=Transition")]
    public void A_denied_strength_is_its_contrary_or_a_note(string phrase, string read) => Assert.Equal(read, Line(phrase));

    [Theory]
    [InlineData("spine intact", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("spine is whole", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("rails not cut", "lookedfor kind=rails-cut")]
    [InlineData("opening is even", "finding kind=opening-even character=Strength zone=Opening")]
    [InlineData("heart well kept", "finding kind=heart-well-kept character=Strength zone=HeartCentre")]
    [InlineData("low D speaks at once", "test test=LowResponse step=\"speaks at once\" pitch=D")]
    [InlineData("not flat, in tune", "test test=TuningNote step=\"in tune\"")]
    [InlineData("spine scraped away", "finding kind=spine-scraped character=Fault zone=Spine")]
    public void What_is_praised_or_a_fault_reads_as_before(string phrase, string read) => Assert.Equal(read, Line(phrase));

    private static void AssertNoPraise(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Strength }
            || entry is { Kind: EntryKind.LookedFor, Slots.Kind: { } kind } && FindingCatalogue.Find(new FindingKindId(kind))?.Usually is FindingCharacter.Strength);

    private static void AssertNoBest(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots: { Test: { } test, Step: { } step } } && TestScale.Of(test) is { } scale && scale.Steps[scale.Good] == step);

    private static string Line(string phrase) => string.Join(" | ", Read(phrase).Select(PhraseCorpus.LineOf));

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
