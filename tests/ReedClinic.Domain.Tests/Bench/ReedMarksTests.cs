using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Reeds.Drawing;

namespace ReedClinic.Domain.Tests.Bench;

public sealed class ReedMarksTests
{
    private readonly List<BenchEntry> entries = [];

    [Fact]
    public void An_empty_log_marks_nothing() => Assert.Empty(ReedMarks.Of(BenchLog.Empty));

    [Fact]
    public void A_finding_is_marked_by_its_character_and_is_gone_when_it_has_gone()
    {
        var found = Say(Found("tip-corners-thick", FindingCharacter.Fault, KnownBy.Light));

        Assert.Equal(
            new ReedMark(new Place(Zone.TipCorners), MarkKind.Fault, "tip corners too thick", "by light"),
            Assert.Single(ReedMarks.Of(BenchLog.Fold(entries))));

        Say(Value(FindingEnded.Of(found, FindingEnding.Gone)));
        Assert.Empty(ReedMarks.Of(BenchLog.Fold(entries)));
    }

    [Theory]
    [InlineData(FindingCharacter.Strength, MarkKind.Strength)]
    [InlineData(FindingCharacter.Taste, MarkKind.Taste)]
    [InlineData(FindingCharacter.Fault, MarkKind.Fault)]
    public void Strength_taste_and_fault_keep_their_own_marks(FindingCharacter character, MarkKind kind)
    {
        Say(Found("tip-corners-thick", character));

        Assert.Equal(kind, Assert.Single(ReedMarks.Of(BenchLog.Fold(entries))).Kind);
    }

    [Fact]
    public void The_same_work_at_one_place_is_one_mark_with_its_passes()
    {
        Say(Thinned());
        Say(Value(Domain.Bench.Test.Of(TestKind.Effort, 2)));
        Say(Thinned());

        Assert.Equal(
            new ReedMark(new Place(Zone.TipSides), MarkKind.Worked, "thinned at the sides of the tip", "passes 1, 2", Times: 2),
            Assert.Single(ReedMarks.Of(BenchLog.Fold(entries))));
    }

    [Fact]
    public void Each_fact_that_is_drawn_has_the_number_of_its_mark_and_what_has_gone_or_is_not_drawn_has_none()
    {
        var left = Say(Value(LeaveAlone.Of(new Place(Zone.HeartCentre, Blades.Upper), "good cane")));
        var first = Say(Thinned());
        var gone = Say(Found("tip-corners-thick", FindingCharacter.Fault));
        var stays = Say(Found("tip-corners-thick", FindingCharacter.Strength));
        Say(Value(FindingEnded.Of(gone, FindingEnding.Gone)));
        var second = Say(Thinned());
        var log = BenchLog.Fold(entries);

        var numbers = ReedMarks.Numbers(log);

        Assert.Equal(new Dictionary<EntryId, int> { [stays] = 1, [first] = 2, [second] = 2, [left] = 3 }, numbers);
        Assert.Equal(["good cane"], ReedMarks.Of(log).Skip(numbers[left] - 1).Select(mark => mark.Words));
    }

    [Fact]
    public void A_place_left_alone_says_why()
    {
        Say(Value(LeaveAlone.Of(new Place(Zone.HeartCentre, Blades.Upper), "good cane")));

        Assert.Equal(
            new ReedMark(new Place(Zone.HeartCentre, Blades.Upper), MarkKind.LeaveAlone, "good cane"),
            Assert.Single(ReedMarks.Of(BenchLog.Fold(entries))));
    }

    [Fact]
    public void Something_else_is_marked_in_the_teachers_own_words()
    {
        Say(Value(Finding.Of(FindingKindId.SomethingElse, FindingCharacter.Taste, new Place(Zone.Opening), words: "an odd lean")));

        Assert.Equal("an odd lean", Assert.Single(ReedMarks.Of(BenchLog.Fold(entries))).Words);
    }

    [Fact]
    public void What_is_only_suspected_is_marked_so_in_the_log_and_while_it_is_being_said()
    {
        var suspected = Value(Finding.Of(new FindingKindId("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners), knownBy: KnownBy.Light, certainty: Certainty.Suspected));
        Say(suspected);

        var mark = Assert.Single(ReedMarks.Of(BenchLog.Fold(entries)));
        Assert.Equal((true, "by light", "suspected; by light"), (mark.Suspected, mark.Detail, mark.LabelDetail));
        Assert.True(ReedMarks.Of(suspected)!.Suspected);
        Assert.Contains("suspected", string.Join(' ', Assert.Single(new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, [mark with { Place = new Place(Zone.Spine, Blades.Upper) }]).Labels).Lines), StringComparison.Ordinal);
    }

    private static Finding Found(string kind, FindingCharacter character, KnownBy knownBy = KnownBy.NotSaid) =>
        Value(Finding.Of(new FindingKindId(kind), character, new Place(Zone.TipCorners), knownBy: knownBy));

    private static Adjustment Thinned() => Value(Adjustment.Of(new AdjustmentKindId("thin-tip-sides"), new Place(Zone.TipSides), new Amount(3)));

    private static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private EntryId Say(BenchEntry entry)
    {
        var n = entries.Count + 1;
        var id = new EntryId(Id(n));
        entries.Add(entry.StampedWith(new EntryStamp(id, new ReedId(Id(900)), n, new OperationId(Id(500 + n)), DateTimeOffset.UnixEpoch, new AccountId(Id(901)))));
        return id;
    }

    private static Guid Id(int n) => new(n, 0, 0, new byte[8]);
}
