using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Tests.People;

/// <summary>What can be an address: RFC 5321, sections 2.3.5 (hosts by their full names) and 4.5.3.1.3 (how long).</summary>
public sealed class EmailAddressTests
{
    [Theory]
    [InlineData("ines@harbour.example")]
    [InlineData(" ines@harbour.example ", "ines@harbour.example")]
    [InlineData("inês+reeds@mail.harbour.example")]
    [InlineData("\"a@b\"@harbour.example")]
    public void A_full_address_is_taken_as_it_was_written(string typed, string? kept = null) => Assert.Equal(kept ?? typed, EmailAddress.Read(typed));

    [Theory]
    [InlineData("x@exmaple")]
    [InlineData("x@.example")]
    [InlineData("x@harbour.")]
    [InlineData("x@harbour..example")]
    [InlineData("harbour.example")]
    [InlineData("@harbour.example")]
    [InlineData("x@")]
    [InlineData("two words@harbour.example")]
    [InlineData("<x@harbour.example>")]
    [InlineData("")]
    [InlineData(null)]
    public void What_no_mail_could_reach_is_none(string? typed) => Assert.Null(EmailAddress.Read(typed));

    [Fact]
    public void Somebody_is_still_found_by_an_address_that_was_taken_when_one_word_would_do() => Assert.Equal("maren@studio", EmailAddress.ReadAny(" maren@studio "));
}
