using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Domain.Tests.Catalogues;

public sealed class CatalogueReaderTests
{
    /// <summary>One word of one file is spoilt; the line that was spoilt is named, and nothing is taken.</summary>
    [Theory]
    [InlineData("tests", "\tSeal\t", "\tSeel\t", "none of Crow")]
    [InlineData("tests", "crow-soft\tcrow with", "Crow Soft\tcrow with", "isn’t a name")]
    [InlineData("tests", "\tpublished:why-crow", "\tpublished:hearsay", "not among the sources")]
    [InlineData("signs", "crow-low\teasily default", "crow-low\tdaily default", "isn’t one of the words")]
    [InlineData("signs", "crow-low\teasily default", "crow-low\teasily", "how it is known")]
    [InlineData("signs", "test:Crow=3", "test:Crow=9", "nothing that the records tell")]
    [InlineData("signs", "test:Crow=3", "test:Crow=0", "nothing that the records tell")]
    [InlineData("signs", "!finding:tied-straight", "!finding:tip-thick", "nothing that the records tell")]
    [InlineData("signs", "crow-beats\tthe", "crow-low\tthe", "a second time")]
    [InlineData("signs", "\tcrow-high-only\tsometimes", "\tcrow-beats\tsometimes", "opposite")]
    [InlineData("signs", "\tseal-blow\tfinding:side-leak", "\tseal-bubble\tfinding:side-leak", "no test “seal-bubble”")]
    [InlineData("causes", "check-player wait thin-tip-sides", "check-player wait thin-tip-slides", "no adjustment “thin-tip-slides”")]
    [InlineData("causes", "check-player wait thin-tip-sides", "clip wait thin-tip-sides", "never to begin with")]
    [InlineData("causes", "soaked too long", "wild, unstable pitch", "another entry called")]
    [InlineData("causes", "Let it dry for a while.", "Let it dry for a while", "whole sentence")]
    [InlineData("causes", "\tsometimes default\tclean-inside rest-dry", "\tsometimes hearsay\tclean-inside rest-dry", "doesn’t say how it is known")]
    [InlineData("links", "sharp-and-hard\twhole-sharp", "sharp-and-hard\twhole-shrap", "no “whole-shrap”")]
    [InlineData("links", "sharp-and-hard\twhole-sharp", "sharp-and-hard\tfeels-hard", "a second time")]
    [InlineData("links", "sharp-and-hard\twhole-sharp\ttypical default", "sharp-and-hard\twhole-sharp\t0.7", "how it is known")]
    [InlineData("adjustments", "-1..+1 published:two-ideas+fixes", "+1..-1 published:two-ideas+fixes", "isn’t a range")]
    [InlineData("adjustments", "-1..+1 published:two-ideas+fixes", "-3..+1 published:two-ideas+fixes", "isn’t a range")]
    [InlineData("adjustments", "dust-heart\t=", "dust-heart\tdust it", "From name to mark")]
    [InlineData("adjustments", "\tcrow-high\t-", "\tcrow-hoarse\t-", "no sign “crow-hoarse”")]
    [InlineData("adjustments", "\t4 practice\t-1 practice\t-2 practice", "\t6 practice\t-1 practice\t-2 practice", "isn’t a risk")]
    [InlineData("defaults", "0.93 default", "1.2 default", "between 0 and 1")]
    [InlineData("sources", "principles\t", "unheard-of\t“A book”\nprinciples\t", "Nothing names")]
    [InlineData("causes", "id\tname", "id\ttitle", "columns must be")]
    [InlineData("causes", "wild, unstable pitch\t", "wild, unstable pitch", "cells")]
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
