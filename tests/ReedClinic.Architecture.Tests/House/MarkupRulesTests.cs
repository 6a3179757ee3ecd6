using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

public sealed class MarkupRulesTests
{
    /// <summary>The reviewed files, each with why what it shows is safe.</summary>
    private static readonly Dictionary<string, string> Reviewed = new()
    {
        ["src/ReedClinic.Documents/Words/MarkedWords.cs"] = "the one class that reads marks and sieves what comes out",
        ["src/ReedClinic.Documents/Words/WordsText.cs"] = "the same marks as plain text; makes no markup",
        ["src/ReedClinic.Web/Shared/Words.razor"] = "shows what MarkedWords made",
        ["src/ReedClinic.Web/Features/Letters/LetterBlocks.razor"] = "shows what LetterPage made, which escapes every text",
        ["src/ReedClinic.Web/Features/Letters/LetterFoot.razor"] = "a style with the letters, digits and hyphens of a code in it",
        ["src/ReedClinic.Web/Features/Letters/LetterSheet.razor"] = "the same, as the letter is read and printed",
        ["src/ReedClinic.Web/Features/Letters/LetterPages.cs"] = "hands on what LetterArticle drew, fresh or as it was kept",
        ["src/ReedClinic.Web/Features/Letters/LetterReadPage.razor"] = "holds what LetterPages handed on, or the mark where it goes",
        ["src/ReedClinic.Web/Features/Letters/LetterSentPage.razor"] = "holds what LetterPages handed on",
        ["src/ReedClinic.Web/Features/Letters/LetterShown.razor"] = "shows it",
    };

    [Fact]
    public void Text_becomes_markup_in_reviewed_files_alone() => Found.None(MarkupRules.Unreviewed(Repository.All, Reviewed));

    [Fact]
    public void The_list_names_no_file_that_does_not_need_it() => Found.None(MarkupRules.ReviewedForNothing(Repository.All, Reviewed));

    [Theory]
    [InlineData("src/ReedClinic.Web/Features/Desk/DeskPile.razor", "<p>@((MarkupString)row.Note)</p>")]
    [InlineData("src/ReedClinic.Web/Shared/Note.cs", "builder.AddMarkupContent(0, note);")]
    [InlineData("src/ReedClinic.Documents/Letters/LetterPage.cs", "using Markdig;")]
    [InlineData("src/ReedClinic.Documents/Tables/CsvTable.cs", "using Ganss.Xss;")]
    [InlineData("src/ReedClinic.Web/wwwroot/js/note.js", "place.innerHTML = note;")]
    public void One_more_place_is_seen(string path, string line) => Found.One(MarkupRules.Unreviewed([new Source(path, "\n" + line)], Reviewed), $"{path}:2");

    [Fact]
    public void A_reviewed_file_that_makes_no_markup_any_more_is_seen() =>
        Found.One(MarkupRules.ReviewedForNothing([], new Dictionary<string, string> { ["src/X.cs"] = "once" }), "src/X.cs");
}
