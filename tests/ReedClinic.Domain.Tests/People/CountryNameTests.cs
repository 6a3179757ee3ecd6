using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

/// <summary>What can be the name of a country. The names are among the short names of ISO 3166-1, from memory, or what people call them.</summary>
public sealed class CountryNameTests
{
    [Theory]
    [InlineData("Portugal")]
    [InlineData("UK")]
    [InlineData("Côte d’Ivoire")]
    [InlineData("Côte d'Ivoire")]
    [InlineData("Guinea-Bissau")]
    [InlineData("St. Vincent & the Grenadines")]
    [InlineData("Korea (Republic of)")]
    [InlineData("Congo, Democratic Republic of the")]
    [InlineData("Åland")]
    [InlineData("日本")]
    [InlineData("الأردن")]
    [InlineData("ประเทศไทย")] // with marks above the letters
    public void A_name_stays_as_it_was_written(string typed)
    {
        var problems = new List<Problem>();
        Assert.Equal(typed, CountryName.Read($" {typed} ", "Country", problems));
        Assert.Empty(problems);
    }

    [Theory]
    [InlineData("12345")]
    [InlineData("?")]
    [InlineData("x")]
    [InlineData("me@harbour.example")]
    [InlineData("<b>Norway</b>")]
    [InlineData("http://harbour.example/")]
    [InlineData("-Norway")]
    public void What_is_no_name_is_said_beside_the_field(string typed)
    {
        var problems = new List<Problem>();
        Assert.Null(CountryName.Read(typed, "Country", problems));
        Assert.Equal("Country", Assert.Single(problems).Field);
    }

    [Fact]
    public void Nobody_has_to_say()
    {
        var problems = new List<Problem>();
        Assert.Null(CountryName.Read("  ", "Country", problems));
        Assert.Empty(problems);
    }
}
