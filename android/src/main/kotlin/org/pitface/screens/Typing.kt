package org.pitface.screens

import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.text.KeyboardActions
import androidx.compose.foundation.text.KeyboardOptions
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.OutlinedTextField
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalFocusManager
import androidx.compose.ui.text.input.ImeAction
import androidx.compose.ui.text.input.KeyboardCapitalization
import androidx.compose.ui.unit.dp
import org.pitface.core.ShownBlock

/**
 * Text to be typed. What is typed is kept at once and entered by leaving or by the next tap, one line of it by the key too;
 * in what may be long the key begins a new line.
 */
@Composable
internal fun Typing(typing: ShownBlock.Typing, doer: Doer) {
    var text by rememberSaveable(typing.act, typing.value) { mutableStateOf(typing.value) }
    val focus = LocalFocusManager.current
    OutlinedTextField(
        value = text,
        onValueChange = {
            text = it
            doer.typed(typing.act, it)
        },
        modifier = Modifier.fillMaxWidth().padding(horizontal = Edge),
        label = { Text(typing.label) },
        singleLine = !typing.long,
        minLines = if (typing.long) 3 else 1,
        textStyle = MaterialTheme.typography.bodyLarge,
        keyboardOptions = KeyboardOptions(
            capitalization = KeyboardCapitalization.Sentences, imeAction = if (typing.long) ImeAction.Default else ImeAction.Done,
        ),
        keyboardActions = KeyboardActions(onDone = {
            focus.clearFocus()
            doer.enter()
        }),
    )
}
