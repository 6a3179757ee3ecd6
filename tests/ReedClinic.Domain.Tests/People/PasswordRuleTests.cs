using CsCheck;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

public sealed class PasswordRuleTests
{
    // NIST SP 800-63B-4, section 3.1.1.2: at least 15 characters when the password is the only factor.
    [Theory]
    [InlineData("", false)]
    [InlineData(null, false)]
    [InlineData("fourteen chars", false)]
    [InlineData("fifteen letters", true)]
    [InlineData("tout à l’heure !", true)]
    [InlineData("Ωμέγα και άλφα μαζί", true)]
    public void Fifteen_characters_of_any_kind_are_enough(string? typed, bool taken) =>
        Assert.Equal(taken, PasswordRule.ProblemWith(typed) is null);

    [Fact]
    public void A_character_outside_the_basic_plane_counts_once()
    {
        const string Fourteen = "🎶🌊🪵🔪🎼🧵🕯🌙🚣🐚🧭🦀🐟🍋";
        Assert.Equal(14, Fourteen.EnumerateRunes().Count());
        Assert.NotNull(PasswordRule.ProblemWith(Fourteen));
        Assert.Null(PasswordRule.ProblemWith(Fourteen + "🌧"));
    }

    [Fact]
    public void A_password_as_long_as_a_book_is_refused()
    {
        var book = string.Concat(Enumerable.Repeat("seven boats in the harbour and a gull. ", 10));
        Assert.Null(PasswordRule.ProblemWith(book[..PasswordRule.Longest]));
        Assert.NotNull(PasswordRule.ProblemWith(book[..(PasswordRule.Longest + 1)]));
    }

    // OWASP ASVS 5.0, 6.2.5, 6.2.8, 6.2.9: any characters, as they were typed, and at least 64 of them.
    [Fact]
    public void Any_characters_are_taken_as_they_were_typed() => Gen.Char.Array[40, 100]
        .Where(letters => letters.Distinct().Count() > 30)
        .Sample(letters => PasswordRule.ProblemWith(new string(letters)) is null);

    // OWASP ASVS 5.0, 6.1.2 and 6.2.11: words about the service and the person; runs and repetitions are our own addition.
    [Theory]
    [InlineData("123456789012345")]
    [InlineData("aaaaaaaaaaaaaaaaaa")]
    [InlineData("abcdefghijklmnopqrst")]
    [InlineData("qwertyuiopasdfghjkl")]
    [InlineData("poiuytrewqlkjhgfdsa")]
    [InlineData("               ")]
    [InlineData("oboe reed oboe reed")]
    [InlineData("ReedClinic2026!!")]
    [InlineData("password1234567890")]
    [InlineData("Mara Quay Harbour 1")]
    [InlineData("harbourharbour")]
    public void What_would_be_tried_first_is_refused(string typed) =>
        Assert.Contains("first things", PasswordRule.ProblemWith(typed, 8, new HashSet<string> { "harbour" }, "Mara Quay", "mara@harbour.example"), StringComparison.Ordinal);

    [Fact]
    public void With_a_second_step_eight_are_enough()
    {
        Assert.Null(PasswordRule.ProblemWith("gull&tide", PasswordRule.ShortestWithSecondStep));
        Assert.NotNull(PasswordRule.ProblemWith("gull&ti", PasswordRule.ShortestWithSecondStep));
        Assert.NotNull(PasswordRule.ProblemWith("gull&tide"));
    }

    [Theory]
    [InlineData(" ines@harbour.example ", "ines@harbour.example")]
    [InlineData("o'neill+reeds@harbour.example", "o'neill+reeds@harbour.example")]
    [InlineData("@harbour.example", null)]
    [InlineData("ines@", null)]
    [InlineData("ines", null)]
    [InlineData("i nes@harbour.example", null)]
    [InlineData("ines@harbour.example\r\nBcc: all@harbour.example", null)]
    [InlineData("Ines <ines@harbour.example>", null)]
    public void An_address_is_kept_as_written_unless_it_cannot_be_one(string typed, string? kept) =>
        Assert.Equal(kept, EmailAddress.Read(typed));

    [Fact]
    public void A_word_over_and_over_is_no_better_than_the_word()
    {
        var common = new HashSet<string>(StringComparer.Ordinal) { "heronlake" };

        Assert.NotNull(PasswordRule.ProblemWith("kestrelkestrelkestrel"));
        Assert.NotNull(PasswordRule.ProblemWith("heronlakeheronlake", PasswordRule.Shortest, common));
        Assert.Null(PasswordRule.ProblemWith("heronlakeheronlake"));
    }
}
