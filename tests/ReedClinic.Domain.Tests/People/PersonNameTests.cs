using System.Text;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

public sealed class PersonNameTests
{
    [Theory]
    [InlineData("Sanne")]
    [InlineData("  Sanne ", "Sanne")]
    [InlineData("Nguyễn Thị Ngọc")]
    [InlineData("Nguye\u0302\u0303n")] // the same e, taken apart
    [InlineData("שָׁלוֹם")] // two marks on one letter
    [InlineData("مريم")]
    [InlineData("می\u200Cنا")] // a joiner that Persian needs
    [InlineData("O’Dowd-\u200FÅse")]
    [InlineData("👩‍👧")]
    public void A_name_stays_as_it_was_written(string typed, string? kept = null) => Assert.Equal(kept ?? typed, PersonName.Read(typed));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("\u200B")]
    [InlineData("\u3164")]
    [InlineData("\u0301")]
    [InlineData("two\nlines")]
    [InlineData("two\u2028lines")]
    [InlineData("reed\0")]
    [InlineData("reed\uD800")]
    [InlineData("reed\uFFFE")]
    public void What_is_no_single_line_to_be_seen_is_refused(string? typed) =>
        Assert.Equal("Write a name of 1 to 80 characters, on one line.", PersonName.ProblemWith(typed));

    // Unicode Standard Annex 9, section 2: explicit embeddings, overrides and isolates.
    [Fact]
    public void Every_character_that_turns_text_round_is_refused()
    {
        var turning = Enumerable.Range(0x202A, 5).Concat(Enumerable.Range(0x2066, 4)).Select(code => (char)code);

        Assert.All(turning, code => Assert.Contains("turns the direction", PersonName.ProblemWith($"ree{code}d"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(4, true)]
    [InlineData(5, false)]
    public void Marks_are_capped_on_each_letter(int marks, bool taken)
    {
        Assert.Equal(taken, PersonName.ProblemWith("Z" + new string('\u0351', marks)) is null);
        Assert.Equal(taken, PersonName.ProblemWith("Z" + string.Concat(Enumerable.Repeat("\u200D\u0351", marks))) is null);
        Assert.Null(PersonName.ProblemWith(string.Concat(Enumerable.Repeat("e\u0301", 20))));
    }

    [Fact]
    public void No_hostile_text_is_a_name_that_spills_into_other_text() =>
        Assert.All(HostileTexts.All, vector =>
        {
            if (PersonName.Read(vector.Text) is { } name)
            {
                Assert.InRange(name.Length, 1, PersonName.MaxLength);
                Assert.DoesNotMatch(@"[\p{Cc}\p{Zl}\p{Zp}\u202A-\u202E\u2066-\u2069]", name);
                Assert.Equal(name, Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(name)));
            }
            else
            {
                Assert.NotEmpty(PersonName.ProblemWith(vector.Text)!);
            }
        });
}
