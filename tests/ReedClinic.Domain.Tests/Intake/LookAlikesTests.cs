using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Tests.Intake;

/// <summary>Which reeds can be taken for each other by the words that should tell them apart. The words are invented.</summary>
public sealed class LookAlikesTests
{
    [Theory]
    [InlineData("red thread", "red thread, and I bit the corner", true)]
    [InlineData("The RED thread", "bitten, with a red thread", true)]
    [InlineData("red thread", "blue thread", false)]
    [InlineData("red thread, one dot", "red thread, two dots", false)]
    [InlineData("the", "red thread", false)]
    [InlineData(null, "red thread", false)]
    [InlineData("κόκκινη κλωστή", "κόκκινη κλωστή, λεκές", true)]
    public void Reeds_can_be_taken_for_each_other_where_all_words_of_one_are_said_of_the_other(string? one, string? other, bool alike)
    {
        var found = LookAlikes.In([(1, one), (2, other), (3, "green cork")]);

        Assert.Equal(alike ? [2] : [], found[1]);
        Assert.Equal(alike ? [1] : [], found[2]);
        Assert.Empty(found[3]);
    }
}
