using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Tests.Catalogues;

public sealed class CatalogueReaderTests
{
    /// <summary>File, what stands there, what is put in its place, and what is said of it.</summary>
    public static TheoryData<string, string, string, string> Nonsense => new()
    {
        { "tests", "\tSeal\t", "\tSeel\t", "none of Crow" },
        { "tests", "crow-soft\tcrow with", "Crow Soft\tcrow with", "isn’t a name" },
        { "tests", "\tpublished:why-crow", "\tpublished:hearsay", "not among the sources" },
        { "signs", "crow-low\teasily default", "crow-low\tdaily default", "isn’t one of the words" },
        { "signs", "crow-low\teasily default", "crow-low\teasily", "how it is known" },
        { "signs", "test:Crow=3", "test:Crow=9", "nothing that the records tell" },
        { "signs", "test:Crow=3", "test:Crow=0", "nothing that the records tell" },
        { "signs", "!finding:tied-straight", "!finding:tip-thick", "nothing that the records tell" },
        { "signs", "crow-beats\tthe", "crow-low\tthe", "a second time" },
        { "signs", "\tcrow-high-only\tsometimes", "\tcrow-beats\tsometimes", "opposite" },
        { "signs", "\tseal-blow\tfinding:side-leak", "\tseal-bubble\tfinding:side-leak", "no test “seal-bubble”" },
        { "causes", "check-player wait thin-tip-sides", "check-player wait thin-tip-slides", "no adjustment “thin-tip-slides”" },
        { "causes", "check-player wait thin-tip-sides", "clip wait thin-tip-sides", "never to begin with" },
        { "causes", "soaked too long", "wild, unstable pitch", "another entry called" },
        { "causes", "Let it dry for a while.", "Let it dry for a while", "whole sentence" },
        { "causes", "\tsometimes default\tclean-inside rest-dry", "\tsometimes hearsay\tclean-inside rest-dry", "doesn’t say how it is known" },
        { "links", "sharp-and-hard\twhole-sharp", "sharp-and-hard\twhole-shrap", "no “whole-shrap”" },
        { "links", "sharp-and-hard\twhole-sharp", "sharp-and-hard\tfeels-hard", "a second time" },
        { "links", "sharp-and-hard\twhole-sharp\ttypical default", "sharp-and-hard\twhole-sharp\t0.7", "how it is known" },
        { "adjustments", "-1..+1 published:two-ideas+fixes", "+1..-1 published:two-ideas+fixes", "isn’t a range" },
        { "adjustments", "-1..+1 published:two-ideas+fixes", "-3..+1 published:two-ideas+fixes", "isn’t a range" },
        { "adjustments", "dust-heart\t=", "dust-heart\tdust it", "From name to mark" },
        { "adjustments", "\tcrow-high\t-", "\tcrow-hoarse\t-", "no sign “crow-hoarse”" },
        { "adjustments", "\t4 practice\t-1 practice\t-2 practice", "\t6 practice\t-1 practice\t-2 practice", "isn’t a risk" },
        { "defaults", "0.93 default", "1.2 default", "between 0 and 1" },
        { "sources", "principles\t", "unheard-of\t“A book”\nprinciples\t", "Nothing names" },
        { "causes", "id\tname", "id\ttitle", "columns must be" },
        { "causes", "wild, unstable pitch\t", "wild, unstable pitch", "cells" },
    };

    /// <summary>One word of one file is spoilt; the line that was spoilt is named, and nothing is taken.</summary>
    [Theory]
    [MemberData(nameof(Nonsense))]
    public void Nonsense_is_refused_with_its_line(string file, string right, string wrong, string sentence)
    {
        var files = ShippedFiles.Texts();
        var at = files[file].IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{file} has no “{right}”.");
        files[file] = files[file].Remove(at, right.Length).Insert(at, wrong);

        var reading = CatalogueReader.Read(files);

        Assert.Null(reading.Catalogue);
        var line = files[file].AsSpan(0, at).Count('\n') + 1;
        Assert.Contains(reading.Problems, problem => problem.File == file && problem.Sentence.Contains(sentence, StringComparison.Ordinal)
            && (problem.Line == line || sentence is "another entry called" or "opposite" or "a second time"));
        Assert.All(reading.Problems, problem => Assert.True(problem.Line > 0, problem.ToString()));
    }

    [Fact]
    public void A_missing_file_is_told()
    {
        var files = ShippedFiles.Texts();
        files.Remove("links");

        Assert.Equal("links.tsv, line 0: This file is missing.", Assert.Single(CatalogueReader.Read(files).Problems).ToString());
    }

    [Fact]
    public void An_entry_that_nothing_uses_is_told()
    {
        var files = ShippedFiles.Texts();
        files["tests"] += "spare\tspare\tTry it.\tright\twrong\t-\tpractice\n";
        files["signs"] += "lonely\tit is lonely\tpeep\t-\t-\tseldom default\n";

        var told = CatalogueReader.Read(files).Problems.Select(problem => problem.Sentence).ToList();

        Assert.Contains(told, sentence => sentence.StartsWith("spare:", StringComparison.Ordinal));
        Assert.Contains(told, sentence => sentence.StartsWith("lonely:", StringComparison.Ordinal));
    }
}
