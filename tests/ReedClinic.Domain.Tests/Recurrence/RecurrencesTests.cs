using CsCheck;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class RecurrencesTests
{
    private static readonly string[] Kinds = ["tip-thin", "tip-corners-thick", "tip-even-across", "tip-not-separate", "spine-intact", "worn"];

    private static readonly StudentHistory Steady = Sheets.History(
        Sheets.Batch(1, "+tip-corners-thick +spine-intact -tip-thin", "+tip-corners-thick +spine-intact", "+tip-even-across -tip-thin"),
        Sheets.Batch(2, "+tip-corners-thick +spine-intact", "+tip-corners-thick +spine-intact", "-tip-corners-thick -spine-intact"),
        Sheets.Batch(3, "+tip-even-across +spine-intact", "+tip-corners-thick +spine-intact", "?tip-corners-thick +spine-intact", ""));

    [Fact]
    public void Each_line_tells_this_batch_what_was_before_and_the_studio()
    {
        var line = Recurrences.Of(Steady, Studio(12, "-tip-corners-thick", "+tip-corners-thick", "-tip-corners-thick", "-tip-corners-thick")).Of("tip-sides-not-thinner")!;

        Assert.Equal(new Tally(3, 3, 4, Suspected: 1), line.InBatch.Tally);
        Assert.Equal(new Tally(5, 6, 6), line.Before.Tally);
        Assert.Equal("In all three reeds looked at for it (four in the batch), in one of them only suspected, and in five of the six looked at for it before.", line.Evidence);
        Assert.Equal(TrendKind.Persisting, line.Became);
        Assert.InRange(line.AboveStudio!.Value, 0.95, 1);
        Assert.True(line.Share.Low < WilsonInterval.Of(8, 9).Low, "by batches the interval is wider than by reeds");
        Assert.InRange(line.Since!.Value.Middle, 1 / 6.0 - 1e-9, 1 / 6.0 + 1e-9);
    }

    [Fact]
    public void What_is_done_well_is_found_the_same_way_and_told_first()
    {
        var report = Recurrences.Of(Steady, StudioRates.Unknown);

        Assert.Equal("support-kept", report.All.First(line => line.Theme.IsFamily).Theme.Id);
        Assert.Equal(new Tally(3, 3, 4) + new Tally(4, 5, 6), report.Of("spine-intact")!.Altogether);
        Assert.Equal(TrendKind.Persisting, report.Of("spine-intact")!.Became);
        Assert.Equal([.. report.Strengths, .. report.Faults], report.All);
    }

    [Fact]
    public void A_surely_higher_share_stands_out_and_an_ordinary_one_does_not()
    {
        var history = Sheets.History([.. Enumerable.Range(1, 6).Select(number => Sheets.Batch(
            number, "+tip-thin +worn", "+tip-thin -worn", "+tip-thin -worn", "+tip-thin -worn"))]);
        var report = Recurrences.Of(history, Studio(20, "-tip-thin +worn", "-tip-thin -worn", "-tip-thin -worn", "-tip-thin -worn"));

        Assert.True(report.Of("tip-thin")!.StandsOut);
        Assert.False(report.Of("worn")!.StandsOut);
        Assert.InRange(report.Of("worn")!.AboveStudio!.Value, 0.3, 0.7);
    }

    [Fact]
    public void What_was_looked_for_and_never_found_stands_there_and_what_was_not_looked_for_does_not()
    {
        var report = Recurrences.Of(Steady, StudioRates.Unknown);

        Assert.Equal(TrendKind.TooLittle, report.Of("tip-thin")!.Became);
        Assert.Equal(new Tally(0, 2, 6), report.Of("tip-thin")!.Before.Tally);
        Assert.Null(report.Of("heart-thin"));
    }

    [Fact]
    public void Where_there_is_little_to_go_by_it_is_said_in_a_plain_sentence()
    {
        var one = Sheets.Batch(1, "+tip-thin", "-tip-thin");
        Assert.Equal("There are no reeds to look at yet.", Said(Sheets.History()));
        Assert.Equal("There are no reeds to look at yet.", Said(Sheets.History(Sheets.Batch(1), Sheets.Batch(2))));
        Assert.StartsWith("Nothing has been looked for", Said(Sheets.History(Sheets.Batch(1, "", "", ""))), StringComparison.Ordinal);
        Assert.StartsWith("One batch alone", Said(Sheets.History(one)), StringComparison.Ordinal);
        Assert.StartsWith("One batch alone", Said(Sheets.History(Sheets.Batch(2, "", ""), one)), StringComparison.Ordinal);
        Assert.StartsWith("There are no reeds in this batch", Said(Sheets.History(one, Sheets.Batch(2))), StringComparison.Ordinal);
        Assert.StartsWith("There are too few other students", Said(Sheets.History(one, Sheets.Batch(2, "+tip-thin"))), StringComparison.Ordinal);
        Assert.Null(Recurrences.Of(Sheets.History(one, Sheets.Batch(2, "+tip-thin")), Studio(5, "+tip-thin")).Plainly);
        Assert.Null(Recurrences.Of(Steady, Studio(1, "+tip-corners-thick")).Of("tip-corners-thick")!.AboveStudio);
    }

    /// <summary>Any sheets at all: batches without reeds, nothing looked at, all looked at, one student alone. No number is ever “not a number”.</summary>
    [Fact]
    public void Whatever_the_sheets_say_every_number_is_one() =>
        Gen.Select(History, History.Array[0, 4]).Sample(
            (student, others) =>
            {
                var report = Recurrences.Of(student, StudioRates.Of(others));
                foreach (var line in report.All)
                {
                    Assert.InRange(line.Share.Low, 0, line.Share.High);
                    Assert.InRange(line.Share.High, 0, 1);
                    Assert.InRange(line.AboveStudio ?? 0, 0, 1);
                    Assert.InRange(line.Trend.PValue ?? 0, 0, 1);
                    Assert.InRange(line.Since?.Middle ?? 0, -1, 1);
                    Assert.InRange(line.Altogether.Found, 0, line.Altogether.Looked);
                    Assert.EndsWith(".", line.Evidence, StringComparison.Ordinal);
                }
            },
            iter: 60);

    private static readonly Gen<StudentHistory> History = Gen.Int[0, Kinds.Length - 1].Select(at => Kinds[at])
        .SelectMany(kind => Gen.Int[0, 2].Select(sign => "+-?"[sign] + kind)).Array[0, 5]
        .Select(words => string.Join(' ', words.DistinctBy(word => word[1..]))).Array[0, 4].Array[0, 5]
        .Select(batches => new StudentHistory([.. batches.Select((reeds, at) => Sheets.Batch(at + 1, reeds))]));

    private static string? Said(StudentHistory history) => Recurrences.Of(history, StudioRates.Unknown).Plainly;

    private static StudioRates Studio(int students, params string[] reeds) =>
        StudioRates.Of([.. Enumerable.Range(0, students).Select(_ => Sheets.History(Sheets.Batch(1, reeds)))]);
}
