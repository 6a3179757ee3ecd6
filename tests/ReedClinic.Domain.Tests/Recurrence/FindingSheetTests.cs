using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class FindingSheetTests
{
    private static readonly FindingKindId Corners = new("tip-corners-thick");
    private static readonly FindingKindId Slip = new("slipped-against-winding");
    private static readonly FindingKindId Spine = new("spine-intact");

    [Fact]
    public void Found_looked_for_and_not_looked_are_three_different_answers()
    {
        var sheet = Sheet([Found(Corners)], [Missing(Corners)], []);

        Assert.Equal(
            [SheetAnswer.Yes, SheetAnswer.No, SheetAnswer.NotLooked],
            sheet.Reeds.Select(reed => sheet.Cell(Corners, reed).Answer));
        Assert.Equal(new Tally(1, 2, 3), sheet.Count(Corners, FindingCharacter.Fault));
    }

    [Fact]
    public void What_the_work_caused_is_shown_and_not_counted()
    {
        var sheet = Sheet([Found(Corners, Arose.CausedByTheWork)], [Found(Corners)]);

        Assert.True(sheet.Cell(Corners, sheet.Reeds[0]).CausedByWork);
        Assert.Equal(new Tally(1, 1, 2), sheet.Count(Corners, FindingCharacter.Fault));
    }

    [Fact]
    public void What_was_missing_on_arrival_and_caused_by_the_work_counts_as_missing()
    {
        var sheet = Sheet([Missing(Corners), Found(Corners, Arose.CausedByTheWork)]);

        Assert.Equal(new SheetCell(SheetAnswer.No), sheet.Cell(Corners, sheet.Reeds[0]));
    }

    [Fact]
    public void What_was_there_and_was_made_worse_counts_as_there()
    {
        var sheet = Sheet([Found(Corners), Found(Corners, Arose.CausedByTheWork), Missing(Corners)]);

        Assert.Equal(new SheetCell(SheetAnswer.Yes, FindingCharacter.Fault), sheet.Cell(Corners, sheet.Reeds[0]));
    }

    [Fact]
    public void What_is_suspected_in_one_place_and_certain_in_another_is_certain()
    {
        var sheet = Sheet(
            [Found(Corners, certainty: Certainty.Suspected), Found(Corners)],
            [Found(Corners, certainty: Certainty.Suspected)]);

        Assert.Equal([false, true], sheet.Reeds.Select(reed => sheet.Cell(Corners, reed).Suspected));
    }

    [Fact]
    public void Only_what_stands_counts_and_a_finding_that_has_gone_was_there_when_the_reed_arrived()
    {
        var writer = new Writer();
        var gone = writer.Say(Found(Corners));
        writer.Say(Writer.Value(FindingEnded.Of(gone, FindingEnding.Gone)));
        var mistake = writer.Say(Found(Slip));
        writer.Undo(mistake);

        Assert.Equal([Corners], SheetRow.Of(Writer.Reed, writer.Log).Select(row => row.FindingKind));
    }

    [Fact]
    public void Something_else_has_no_row()
    {
        var writer = new Writer();
        writer.Say(Writer.Value(Finding.Of(
            FindingKindId.SomethingElse, FindingCharacter.Fault, new Place(Zone.Bark), words: "a dark fleck")));

        Assert.Empty(SheetRow.Of(Writer.Reed, writer.Log));
    }

    [Fact]
    public void A_matter_of_taste_is_no_fault_and_the_reed_counts_as_looked_at()
    {
        var sheet = Sheet([Found(Corners)], [Found(Corners, character: FindingCharacter.Taste)]);

        Assert.Equal(new Tally(1, 2, 2), sheet.Count(Corners, FindingCharacter.Fault));
    }

    [Fact]
    public void The_likeliest_lesson_comes_first_and_few_reeds_looked_at_weigh_less_than_many()
    {
        // The slip: both of two. The corners: four of five. The lower ends of the intervals are 0.34 and 0.38.
        var batch = Sheet(
            [Found(Corners), Found(Slip)],
            [Found(Corners), Found(Slip)],
            [Found(Corners)],
            [Found(Corners)],
            [Missing(Corners), Found(Spine, character: FindingCharacter.Strength)]);
        var before = new FindingSheet([], []);

        var lessons = Candidate.Lessons(batch, before);

        Assert.Equal([Corners, Slip], lessons.Select(candidate => candidate.Kind.Id));
        Assert.Equal([Spine], Candidate.Strengths(batch, before).Select(candidate => candidate.Kind.Id));
    }

    [Fact]
    public void Of_equal_counts_the_certain_one_comes_first_then_the_one_that_was_there_before()
    {
        var thick = new FindingKindId("tip-thick");
        var batch = Sheet(
            [Found(thick, certainty: Certainty.Suspected), Found(Corners), Found(Slip)],
            [Found(thick), Found(Corners), Found(Slip)]);
        var before = Sheet([Found(thick), Found(Slip), Missing(Corners)]);

        Assert.Equal([Slip, Corners, thick], Candidate.Lessons(batch, before).Select(candidate => candidate.Kind.Id));
    }

    [Fact]
    public void A_fault_of_earlier_reeds_that_was_looked_for_and_not_found_has_gone()
    {
        var batch = Sheet([Missing(Corners)], [Missing(Corners), Found(Slip)]);
        var before = Sheet([Found(Corners), Found(Slip), Found(new("tip-thick"))]);

        Assert.Equal([Corners], Candidate.Gone(batch, before).Select(candidate => candidate.Kind.Id));
    }

    [Theory]
    [InlineData(3, 3, 3, 0, 0, 0, "In all three reeds.")]
    [InlineData(2, 2, 2, 0, 0, 0, "In both reeds.")]
    [InlineData(2, 3, 3, 0, 0, 0, "In two of the three reeds.")]
    [InlineData(1, 1, 1, 0, 0, 0, "In the one reed of this batch.")]
    [InlineData(0, 1, 1, 0, 0, 0, "Not in the one reed of this batch.")]
    [InlineData(0, 3, 3, 0, 0, 0, "In none of the three reeds.")]
    [InlineData(2, 2, 3, 0, 0, 0, "In both reeds looked at for it (three in the batch).")]
    [InlineData(1, 1, 3, 0, 0, 0, "In the one reed looked at for it (three in the batch).")]
    [InlineData(0, 0, 3, 0, 0, 0, "Not looked for in this batch.")]
    [InlineData(3, 3, 3, 1, 0, 0, "In all three reeds, in one of them only suspected.")]
    [InlineData(2, 3, 3, 2, 0, 0, "In two of the three reeds, so far only suspected.")]
    [InlineData(3, 3, 3, 0, 4, 6, "In all three reeds, and in four of the six looked at for it before.")]
    [InlineData(3, 3, 3, 0, 2, 2, "In all three reeds, and in both looked at for it before.")]
    [InlineData(3, 3, 3, 0, 1, 1, "In all three reeds, and in the one looked at for it before.")]
    [InlineData(3, 3, 3, 0, 0, 5, "In all three reeds; in none of the five looked at for it before.")]
    [InlineData(3, 3, 3, 0, 0, 1, "In all three reeds; not in the one looked at for it before.")]
    [InlineData(0, 3, 3, 0, 3, 3, "In none of the three reeds; it was in all three looked at for it before.")]
    [InlineData(0, 3, 3, 0, 0, 2, "In none of the three reeds, and in none of the two looked at for it before.")]
    [InlineData(12, 13, 13, 0, 0, 0, "In twelve of the 13 reeds.")]
    public void Evidence_is_told_in_one_plain_sentence(
        int found, int looked, int reeds, int suspected, int foundBefore, int lookedBefore, string sentence) =>
        Assert.Equal(
            sentence,
            EvidenceSentence.For(new Tally(found, looked, reeds, suspected), new Tally(foundBefore, lookedBefore, lookedBefore)));

    private static Finding Found(
        FindingKindId kind,
        Arose arose = Arose.AsItArrived,
        FindingCharacter character = FindingCharacter.Fault,
        Certainty certainty = Certainty.Certain) =>
        Writer.Value(Finding.Of(kind, character, new Place(Zone.TipCorners), arose: arose, certainty: certainty));

    private static LookedFor Missing(FindingKindId kind) => Writer.Value(LookedFor.Of(kind));

    private static FindingSheet Sheet(params BenchEntry[][] reeds)
    {
        var ids = reeds.Select((_, index) => new ReedId(Writer.Number(40, index))).ToList();
        return new FindingSheet(ids, reeds.SelectMany((entries, index) =>
        {
            var writer = new Writer();
            foreach (var entry in entries)
            {
                writer.Say(entry);
            }

            return SheetRow.Of(ids[index], writer.Log);
        }));
    }
}
