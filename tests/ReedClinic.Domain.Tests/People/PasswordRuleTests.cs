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
    [InlineData("               ", true)]
    [InlineData("aaaaaaaaaaaaaaa", true)]
    public void Fifteen_characters_of_any_kind_are_enough(string? typed, bool taken) =>
        Assert.Equal(taken, PasswordRule.ProblemWith(typed) is null);

    [Fact]
    public void A_character_outside_the_basic_plane_counts_once()
    {
        var fourteen = string.Concat(Enumerable.Repeat("🎶", 14));
        Assert.NotNull(PasswordRule.ProblemWith(fourteen));
        Assert.Null(PasswordRule.ProblemWith(fourteen + "🎶"));
    }

    [Fact]
    public void A_password_as_long_as_a_book_is_refused()
    {
        Assert.Null(PasswordRule.ProblemWith(new string('a', PasswordRule.Longest)));
        Assert.NotNull(PasswordRule.ProblemWith(new string('a', PasswordRule.Longest + 1)));
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
}
