using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Each place with its own strokes is work of its own, and a number that is said after work is the crow’s where a crow was said before it.</summary>
public sealed class EachItsOwnTests
{
    [Theory]
    [InlineData("upper left corner two, upper right corner one, lower left two, lower right one", "Upper Left 2, Upper Right 1, Lower Left 2, Lower Right 1")]
    [InlineData("corners: left two, right one", " Left 2,  Right 1")]
    [InlineData("corners: upper left 2, lower right 4", "Upper Left 2, Lower Right 4")]
    public void Each_place_has_its_own_strokes(string phrase, string each) =>
        Assert.Equal(each, string.Join(", ", Read(phrase).Where(read => read.Kind == EntryKind.Adjustment).Select(read => $"{read.Slots.Blades} {read.Slots.Sides} {read.Slots.Strokes}")));

    [Theory]
    [InlineData("two off each corner", "  2")]
    [InlineData("left corner two, upper", "Upper Left 2")]
    [InlineData("three strokes off the right rail", " Right 3")]
    public void One_place_is_one(string phrase, string each) =>
        Assert.Equal(each, string.Join(", ", Read(phrase).Where(read => read.Kind == EntryKind.Adjustment).Select(read => $"{read.Slots.Blades} {read.Slots.Sides} {read.Slots.Strokes}")));

    [Theory]
    [InlineData("crow was C minus 30, did the channels both blades five strokes each, now minus 38, hm", TestKind.Crow, -38)]
    [InlineData("crow C plus 10, clipped a hair, now plus 20", TestKind.Crow, 20)]
    [InlineData("crow C, tuning note minus 8", TestKind.TuningNote, -8)]
    public void A_number_after_work_is_the_crows(string phrase, TestKind test, double cents)
    {
        var last = Read(phrase).Last(read => read.Kind == EntryKind.Test);

        Assert.Equal((test, (decimal?)cents), (last.Slots.Test, last.Slots.Cents));
    }

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
