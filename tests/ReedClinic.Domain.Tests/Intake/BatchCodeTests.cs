using CsCheck;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Intake;

/// <remarks>
/// Outside check. The scheme is the ISBN-10's (ISO 2108:1992; weights down to 1, a prime modulus) with 29 in place of 11.
/// The same sum with 11 and the weights 10 to 1 accepts ISBN 0-306-40615-2, the example that the ISBN users' manual and
/// many textbooks work out.
/// </remarks>
public sealed class BatchCodeTests
{
    private static readonly Gen<BatchCode> Codes = Gen.Int[0, BatchCode.HowMany - 1].Select(BatchCode.FromNumber);

    [Fact]
    public void The_weighted_sum_is_the_one_of_the_ISBN_10()
    {
        var digits = "0306406152".Select(digit => digit - '0').ToArray();

        Assert.Equal(0, Enumerable.Range(0, 10).Sum(place => (10 - place) * digits[place]) % 11);
    }

    [Fact]
    public void A_code_worked_out_by_hand()
    {
        // 0 0 0 0 0 1 → weight 2 × 1 = 2, so the check value is 27, the 28th character.
        Assert.Equal("222-223Y", BatchCode.FromNumber(1).ToString());
        Assert.Equal("222-2222", BatchCode.FromNumber(0).ToString());
        Assert.Equal(29, BatchCode.Alphabet.Distinct().Count());
    }

    [Fact]
    public void Every_single_wrong_character_is_noticed()
    {
        // The sum is linear, so what a change does to it depends on the place and the difference alone: one code with every
        // character in every place shows it for all codes.
        foreach (var code in SomeCodes())
        {
            for (var place = 0; place < BatchCode.Length; place++)
            {
                foreach (var other in BatchCode.Alphabet.Where(other => other != code.Value[place]))
                {
                    var wrong = code.Value[..place] + other + code.Value[(place + 1)..];
                    Assert.IsType<Outcome<BatchCode>.Refused>(BatchCode.Read(wrong));
                }
            }
        }
    }

    [Fact]
    public void Every_exchange_of_two_neighbours_is_noticed_whatever_the_two_are()
    {
        for (var place = 0; place < BatchCode.Length - 1; place++)
        {
            foreach (var left in BatchCode.Alphabet)
            {
                foreach (var right in BatchCode.Alphabet.Where(right => right != left))
                {
                    var code = CodeWith(place, left, right);
                    var exchanged = code.Value[..place] + right + left + code.Value[(place + 2)..];
                    Assert.IsType<Outcome<BatchCode>.Refused>(BatchCode.Read(exchanged));
                }
            }
        }
    }

    [Fact]
    public void A_code_reads_back_however_it_is_typed() => Codes.Sample(code =>
    {
        Assert.Equal(code, Read(code.ToString()));
        Assert.Equal(code, Read(" " + code.ToString().ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal) + " "));
        Assert.Equal(code, BatchCode.Stored(code.Value));
    });

    [Fact]
    public void Different_numbers_give_different_codes() =>
        Gen.Select(Gen.Int[0, BatchCode.HowMany - 1], Gen.Int[0, BatchCode.HowMany - 1]).Sample((a, b) =>
            a == b || BatchCode.FromNumber(a) != BatchCode.FromNumber(b));

    [Theory]
    [InlineData("7OP-W3MQ", "2nd", "D, a Q")]
    [InlineData("70P-W3MQ", "2nd", "D, a Q")]
    [InlineData("7KP-W3M1", "7th", "L, a 7")]
    [InlineData("7KP-W3M", "seven characters", "has 6")]
    [InlineData("7KP-W3MQ2", "seven characters", "has 8")]
    [InlineData("7K!-W3MQ", "3rd", "doesn't belong")]
    [InlineData("", "seven letters and digits", "7KP-W3MQ")]
    public void What_is_wrong_is_named(string typed, string where, string what)
    {
        var refused = Assert.IsType<Outcome<BatchCode>.Refused>(BatchCode.Read(typed));

        var problem = Assert.Single(refused.Problems);
        Assert.Contains(where, problem.Message, StringComparison.Ordinal);
        Assert.Contains(what, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_example_in_our_own_words_is_a_good_code() =>
        Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read("7KP-W3MQ"));

    [Fact]
    public void A_code_one_slip_away_is_always_among_the_near_ones() =>
        Gen.Select(Codes, Gen.Int[0, 6], Gen.Char[BatchCode.Alphabet]).Sample((code, place, letter) =>
        {
            var text = code.Value;
            Assert.Equal(letter != text[place], BatchCode.NearTo(text[..place] + letter + text[(place + 1)..]).Contains(code));
            Assert.Contains(code, BatchCode.NearTo(text.Remove(place, 1)));
            Assert.Contains(code, BatchCode.NearTo(text.Insert(place, letter.ToString())));
            var next = Math.Min(place, 5);
            if (text[next] != text[next + 1])
            {
                Assert.Contains(code, BatchCode.NearTo(text[..next] + text[next + 1] + text[next] + text[(next + 2)..]));
            }

            Assert.InRange(BatchCode.NearTo(text[..place] + letter + text[(place + 1)..]).Count, 0, 20);
        });

    [Theory]
    [InlineData("4KP-W3MQ", "The 1st character is “4” here and “7”")]
    [InlineData("7KP-W3MX", "The 7th character is “X” here and “Q”")]
    [InlineData("K7P-W3MQ", "The 1st and 2nd characters are exchanged")]
    [InlineData("7K-W3MQ", "The 3rd character, “P”, is missing")]
    [InlineData("7KPP-W3MQ", "The 4th character, “P”, is one too many")]
    [InlineData("7KP-W3MQ3", "The 8th character, “3”, is one too many")]
    [InlineData("7KP-W3M", "The 7th character, “Q”, is missing")]
    public void The_difference_to_a_batch_that_exists_is_told(string typed, string told) =>
        Assert.StartsWith(told, BatchCode.Difference(typed, Read("7KP-W3MQ")), StringComparison.Ordinal);

    private static IEnumerable<BatchCode> SomeCodes() => Enumerable.Range(0, 29)
        .Select(letter => BatchCode.FromNumber(letter * (1 + 29 * (1 + 29 * (1 + 29 * (1 + 29 * 30))))))
        .Append(BatchCode.FromNumber(BatchCode.HowMany - 1))
        .Append(BatchCode.FromNumber(123_456_789));

    private static BatchCode CodeWith(int place, char left, char right)
    {
        if (place < 5)
        {
            var digits = new int[6];
            digits[place] = BatchCode.Alphabet.IndexOf(left, StringComparison.Ordinal);
            digits[place + 1] = BatchCode.Alphabet.IndexOf(right, StringComparison.Ordinal);
            return BatchCode.FromNumber(digits.Aggregate(0, (number, digit) => number * 29 + digit));
        }

        // The last pair is the sixth character and the check: look for one with that check.
        return Enumerable.Range(0, 29)
            .Select(first => BatchCode.FromNumber(first * 29 + BatchCode.Alphabet.IndexOf(left, StringComparison.Ordinal)))
            .First(code => code.Value[^1] == right);
    }

    private static BatchCode Read(string typed) => Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read(typed)).Value;
}
