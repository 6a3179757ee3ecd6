using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class PraisesTests
{
    [Fact]
    public void A_family_is_praised_where_its_kinds_together_are_on_more_reeds_than_each_alone()
    {
        var praise = Assert.Single(Of(Sheets.Batch(1, "+spine-intact", "+rails-intact", "+spine-intact")));

        Assert.Equal(("support-kept", "spine-intact"), (praise.Theme.Id, praise.Kind.Value));
        Assert.Equal("The parts that hold the reed are well kept. In all three reeds.", praise.Sentence);
    }

    [Fact]
    public void One_kind_is_praised_by_its_own_name_where_the_family_brings_in_no_more()
    {
        var praises = Of(Sheets.Batch(1, "+spine-intact +rails-intact", "+spine-intact", "+spine-intact"));

        Assert.Equal(["spine-intact", "rails-intact"], praises.Select(praise => praise.Theme.Id));
    }

    [Fact]
    public void What_is_on_no_reed_of_this_batch_is_not_praised() =>
        Assert.Empty(Praises.Of(Sheets.Batch(2, "-spine-intact"), Report(Sheets.Batch(1, "+spine-intact"), Sheets.Batch(2, "-spine-intact"))));

    private static IReadOnlyList<Praise> Of(FindingSheet batch) => Praises.Of(batch, Report(batch));

    private static RecurrenceReport Report(params FindingSheet[] batches) => Recurrences.Of(Sheets.History(batches), StudioRates.Unknown);
}
