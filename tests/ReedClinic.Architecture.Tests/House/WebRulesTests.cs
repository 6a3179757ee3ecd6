using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

public sealed class WebRulesTests
{
    /// <summary>Files that may switch a banned symbol off, each with its reason.</summary>
    private static readonly Dictionary<string, string> MayUseBanned = new()
    {
        ["src/ReedClinic.Web/Shared/Announcement.cs"] = "the one class that writes to standard output",
    };

    [Fact]
    public void Entity_Framework_is_named_in_Program_and_Account_alone() => Found.None(WebRules.EntityFrameworkOutsideItsDoor(Repository.All));

    [Theory]
    [InlineData("src/ReedClinic.Web/Features/Bench/BenchPage.razor", 1)]
    [InlineData("src/ReedClinic.Web/Account/SignIn.cs", 0)]
    [InlineData("src/ReedClinic.Web/Program.cs", 0)]
    [InlineData("src/ReedClinic.Data/ClinicDb.cs", 0)]
    public void Entity_Framework_in_a_feature_is_seen(string path, int seen) =>
        Assert.Equal(seen, WebRules.EntityFrameworkOutsideItsDoor([new Source(path, "using Microsoft.EntityFrameworkCore;")]).Count());

    [Fact]
    public void No_component_asks_for_a_context() => Found.None(WebRules.ContextsInComponents(Repository.All));

    [Theory]
    [InlineData("@inject IDbContextFactory<X> F")]
    [InlineData("@inject SqliteClinicDb Db")]
    public void A_component_that_asks_for_a_context_is_seen(string line) =>
        Found.One(WebRules.ContextsInComponents([new Source("src/ReedClinic.Web/Features/Desk/DeskPage.razor", "<p></p>\n" + line)]), "DeskPage.razor:2");

    [Fact]
    public void Map_log_sheet_and_letter_are_our_own_markup() => Found.None(WebRules.LibraryTagsInOurDrawings(Repository.All));

    [Theory]
    [InlineData("src/ReedClinic.Web/Shared/ReedMap/ReedMap.razor")]
    [InlineData("src/ReedClinic.Web/Features/Bench/BenchLog.razor")]
    [InlineData("src/ReedClinic.Web/Features/Recurrence/CommonThreadPage.razor")]
    [InlineData("src/ReedClinic.Web/Features/Letters/Block.razor")]
    public void A_library_button_in_one_of_them_is_seen(string path) =>
        Found.One(WebRules.LibraryTagsInOurDrawings([new Source(path, "<MudButton>x</MudButton>")]), "<MudButton");

    [Fact]
    public void Times_are_shown_by_the_clock_on_the_wall() => Found.None(WebRules.TimesOfNoWall(Repository.All));

    [Theory]
    [InlineData("<span>@entry.RecordedAt.ToString(\"HH:mm\", British)</span>")]
    [InlineData("At.ToString(\"d MMMM yyyy\", Language.British)")]
    [InlineData("View.SentAt!.Value.ToString(\"d MMM HH:mm\")")]
    public void A_time_that_isn_t_is_seen(string line) =>
        Found.One(WebRules.TimesOfNoWall([new Source("src/ReedClinic.Web/Shared/Note.razor", "\n" + line)]), "Note.razor:2");

    [Theory]
    [InlineData("Time.There(entry.RecordedAt).ToString(\"HH:mm\", British)")]
    [InlineData("there.ToString(\"d MMM HH:mm\", British)")]
    [InlineData("now.UtcDateTime.ToString(\"yyyy-MM-dd HH:mm\", Invariant) + \" UTC\"")]
    public void A_time_that_is_is_let_through(string line) => Found.None(WebRules.TimesOfNoWall([new Source("src/ReedClinic.Web/Shared/Note.razor", line)]));

    [Fact]
    public void Only_Announcement_writes_to_standard_output() => Found.None(WebRules.StandardOutput(Repository.All));

    [Theory]
    [InlineData("Console.WriteLine(1);")]
    [InlineData("Console.Out.Write(1);")]
    [InlineData("using var o = Console.OpenStandardOutput();")]
    public void Another_writer_is_seen(string line) =>
        Assert.NotEmpty(WebRules.StandardOutput([new Source("src/ReedClinic.Web/Program.cs", line)]));

    [Fact]
    public void Banned_symbols_are_switched_off_nowhere_else() => Found.None(WebRules.BannedSymbolsLetThrough(Repository.All, MayUseBanned));

    [Fact]
    public void Switching_them_off_is_seen() =>
        Found.One(WebRules.BannedSymbolsLetThrough([new Source("src/X.cs", "#pragma warning disable RS0030")], MayUseBanned), "src/X.cs");
}
