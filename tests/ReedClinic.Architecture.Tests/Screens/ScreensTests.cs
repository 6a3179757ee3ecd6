using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.Screens;

public sealed class ScreensTests
{
    private const string Resources = """<root><data name="Title"><value>x</value></data><data name="StageOpen"><value>x</value></data></root>""";

    /// <summary>Words that may stand in markup, each with its reason.</summary>
    private static readonly Dictionary<string, string> MayStand = [];

    [Fact]
    public void Every_key_that_a_screen_asks_for_is_in_its_resources() => Found.None(new ResourceKeys(WebFiles).Missing());

    [Fact]
    public void Every_key_in_the_resources_is_asked_for() => Found.None(new ResourceKeys(WebFiles).Idle());

    [Theory]
    [InlineData("@T[\"Titel\"] @T[$\"Stage{s}\"]", "Titel", "Title")]
    [InlineData("@T[\"Title\"] @T[$\"State{s}\"]", "State", "StageOpen")]
    [InlineData("@T[\"Title\"] @T[\"State\" + s]", "State", "StageOpen")]
    public void A_missing_and_an_idle_key_are_seen(string razor, string missing, string idle)
    {
        var keys = new ResourceKeys([new Source("XText.resx", Resources), new Source("X.razor", "@inject IStringLocalizer<XText> T\n" + razor)]);

        Found.One(keys.Missing(), missing);
        Found.One(keys.Idle(), idle);
    }

    /// <summary>Words for several that never meet one, each with its reason.</summary>
    private static readonly Dictionary<string, string> NeverOne = new()
    {
        ["PausedKept"] = "a constant, RetentionRules.UntouchedDraft",
        ["CopyOften"] = "a constant, PrivacyBook.MostCopiesADay",
        ["CentsBelow"] = "CentBelow stands beside it",
        ["CentsAbove"] = "CentAbove stands beside it",
        ["CentsRange"] = "from one number to another",
        ["TunerAbove"] = "within CrowTarget.ToleranceCents it is on the note",
        ["TunerBelow"] = "within CrowTarget.ToleranceCents it is on the note",
        ["TunerPicture"] = "a constant, CrowTarget.ToleranceCents",
        ["ContinueWhen"] = "ContinueOne stands beside it",
    };

    [Fact]
    public void Whatever_is_counted_has_words_for_one() => Found.None(CountedWords.In(WebFiles, NeverOne));

    [Theory]
    [InlineData("<data name=\"Kept\"><value>{0} batches</value></data>", true)]
    [InlineData("<data name=\"KeptMany\"><value>{0} batches</value></data>", true)]
    [InlineData("<data name=\"KeptMany\"><value>{0} batches</value></data><data name=\"Kept1\"><value>one batch</value></data>", false)]
    [InlineData("<data name=\"Kept\"><value>{0} batches</value></data><data name=\"KeptOne\"><value>one batch</value></data>", false)]
    [InlineData("<data name=\"Kept\"><value>{0} may send reeds</value></data>", false)]
    public void Words_for_several_alone_are_seen(string data, bool seen) =>
        Assert.Equal(seen, CountedWords.In([new Source("XText.resx", $"<root>{data}</root>")], NeverOne).Any());

    [Fact]
    public void No_words_stand_in_the_markup_itself() => Found.None(VisibleWords.In(Repository.Razor, MayStand));

    [Theory]
    [InlineData("<p>Send reeds</p>", "Send reeds")]
    [InlineData("@if (ready)\n{\n  <p>Send @count reeds</p>\n}", "Send")]
    [InlineData("<button aria-label=\"Close\">×</button>", "Close")]
    [InlineData("<button disabled=\"@(busy || list.Any(x => x > 2))\" aria-label=\"Close\" @onclick=\"() => Go(1)\">×</button>", "Close")]
    [InlineData("@foreach (var reed in Reeds)\n{\n  var n = reed.Number;\n  <li>@n of many</li>\n}", "of many")]
    [InlineData("<b>@T[\"A\"]</b> and <b>@(x ? \"yes\" : \"no\")</b>", "and")]
    public void Words_in_the_markup_are_seen(string razor, string words) =>
        Assert.Contains(VisibleWords.In([new Source("X.razor", razor)], MayStand), found => found.Contains(words, StringComparison.Ordinal));

    [Theory]
    [InlineData("@page \"/desk\"\n@* A note to the reader *@\n<h1>@T[\"Title\"]</h1>\n@code {\n  private string Word => \"Some words\";\n}")]
    [InlineData("@if (list.Count > 0 && list[0] is { Done: true } first)\n{\n  var shown = Show(first);\n  <td class=\"wide\" title=\"@T[\"Done\"]\">@shown</td>\n}\nelse if (other)\n{\n  <br />\n}\nelse\n{\n  @Body\n}")]
    [InlineData("<input type=\"text\" name=\"Name\" value=\"@form.Name\" @onclick=\"() => Pick(first)\" />")]
    [InlineData("<p>@await Html.Load(\"words here\") &nbsp; – @item?.Name!.Length</p>")]
    [InlineData("@switch (block)\n{\n  case Heading h:\n    <h2>@h.Text</h2>\n    break;\n}")]
    [InlineData("<style>.wide { color: red; }</style>")]
    public void Code_and_resources_are_not_words(string razor) => Found.None(VisibleWords.In([new Source("X.razor", razor)], MayStand));

    private static IEnumerable<Source> WebFiles => Repository.All.Where(file => file.IsUnder("src/ReedClinic.Web"));
}
